import { dirname } from 'node:path';
import type { Temporal } from 'temporal-polyfill';
import { quietly } from '../journal/disk/event-file.ts';
import { replaceFile } from '../journal/disk/kept-file.ts';
import { ARRIVING_MS } from '../journal/disk/read-journal.ts';
import type { Lifter } from '../lifter/open-lifter.ts';
import { localDay, type Ports } from '../lifter/ports.ts';
import type { Today } from '../lifter/prepare.ts';
import { rememberedProgram } from '../lifter/program-choice.ts';
import { dayNumber } from '../training/day-number.ts';
import type { Call } from './call.ts';
import { askedAgain, type KeptAnswer, keptAnswerPath, sourcesOf } from './kept-answer.ts';

/**
 * Called before anything is read for an answer; what it gives is called with the answer, and keeps it
 * where nothing changed meanwhile and it holds for the whole day. Fails silently: then it is worked out
 * the next time, too.
 */
export function answerKeeper(
  { ports, argv }: Pick<Call, 'ports' | 'argv'>,
  lifter: Lifter,
): (said: string, today: Today) => void {
  const asked = askedAgain(ports, argv);
  const before = asked && sourcesNow(ports, lifter);
  return (said, today) => {
    const { files, clock } = ports;
    if (!asked || !before || clock.read().wall - before.newest < ARRIVING_MS) return;
    if (!holdsAllDay(lifter, today) || sourcesNow(ports, lifter)?.text !== before.text) return;
    const kept: KeptAnswer = {
      asked: asked.words,
      program: lifter.programPath(),
      sources: before.text,
      said,
    };
    quietly(() => {
      const path = keptAnswerPath(ports, asked.kind);
      files.makeFolder(dirname(path));
      replaceFile(files, path, `${path}.${process.pid}`, Buffer.from(JSON.stringify(kept)));
    });
  };
}

/** Null where the program is not the one of the last session, or something cannot be looked at. */
function sourcesNow(ports: Ports, lifter: Lifter): ReturnType<typeof sourcesOf> | null {
  try {
    // Which other one is taken may depend on files that are not there yet.
    const program = rememberedProgram(lifter.settings().settings, lifter.folders);
    return program === lifter.programPath() ? sourcesOf(ports, program) : null;
  } catch {
    // What is wrong is told by what reads it.
    return null;
  }
}

/** Minutes count for a session that is open, and for what was recorded under a clock that was ahead. */
function holdsAllDay(lifter: Lifter, { state }: Today): boolean {
  const today = dayNumber(localDay(lifter.ports.clock));
  const { lately, weighIns } = lifter.journal().history();
  const isNotAhead = ({ date }: { readonly date: Temporal.PlainDate }) => dayNumber(date) <= today;
  return (
    state !== 'open' && lately.sessions.every(isNotAhead) && weighIns.slice(-1).every(isNotAhead)
  );
}
