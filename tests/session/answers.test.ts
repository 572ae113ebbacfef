import { expect, test } from 'vitest';
import { aimOf } from '../../src/session/aim.ts';
import type { SessionCommand } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { stageNow } from '../../src/session/stage-now.ts';
import { problemText } from '../../src/text/problem.ts';
import { kilograms } from '../../src/training/mass.ts';
import { cluster, lift, type Play, play, prescription, straight } from './a-session.ts';

/**
 * What each command is answered at each moment of a session: the facts that it leads to, or the
 * sentence why not; and what is next after it, and what that aims at. Kept as text, so that no answer changes unseen.
 */
const warm = straight({ warmUp: [{ load: kilograms(40), reps: 5 }] });
const curl = straight({ lift: 'curl', name: 'Curl', track: 'curl straight 5-8' });
const opened = () => play(prescription(warm, cluster(), curl));
const atSets = () => opened().send('skip-set');
const paired = () =>
  play(prescription(straight({ pair: 'a' }), straight({ ...curl, pair: 'a' }), cluster()));
const all = (session: Play) => {
  for (let sets = 0; sets < 20 && session.stage().kind !== 'all-done'; sets += 1) {
    lift(session).wait(400);
  }
  return session;
};

const MOMENTS: Readonly<Record<string, () => Play>> = {
  'before the warm-up': opened,
  'before the first set': atSets,
  'while it is lifted': () => atSets().send('start').wait(20),
  'a second after its start': () => atSets().send('start').wait(1),
  'in the rest': () => lift(atSets()).wait(60),
  'past its early end': () => lift(atSets()).wait(200),
  'past its late end': () => lift(atSets()).wait(400),
  paused: () => lift(atSets()).wait(60).send('pause').wait(30),
  'in a cluster': () => lift(play(prescription(cluster(), curl)), 30).wait(5),
  'after a mini-set': () =>
    lift(lift(play(prescription(cluster(), curl)), 30).wait(20), 10).wait(5),
  'between a pair': () => lift(paired()).wait(60),
  'after pain': () => lift(atSets()).send({ do: 'mark-pain', exercise: 0 }).wait(10),
  'with a lift left out': () => atSets().send({ do: 'skip-exercise', exercise: 0 }),
  'after an undo': () => lift(atSets()).send('undo').wait(5),
  'at the end': () => all(atSets()),
  closed: () => lift(atSets()).send({ do: 'close', how: 'as-it-is' }).wait(10),
};

const other = straight({ lift: 'pull', name: 'Pull', track: 'pull straight 5-8' });
const lighter = straight({ load: kilograms(75) });
const rest = { from: 120, to: 120 };

const COMMANDS: readonly SessionCommand[] = [
  { do: 'start' },
  { do: 'put-down' },
  { do: 'put-down', numbers: { count: 4, reserve: 2, load: kilograms(77.5) } },
  { do: 'put-down', numbers: { count: -1 } },
  { do: 'withdraw-start' },
  { do: 'amend', of: 'file:3', numbers: { count: 4 } },
  { do: 'amend', of: 'file:3', numbers: { reserve: 0, failed: true } },
  { do: 'amend', of: 'file:999', numbers: { count: 4 } },
  { do: 'confirm' },
  { do: 'skip-set' },
  { do: 'skip-exercise', exercise: 0 },
  { do: 'skip-exercise', exercise: 9 },
  { do: 'choose-exercise', exercise: 0 },
  { do: 'choose-exercise', exercise: 1 },
  { do: 'pair', exercise: 1 },
  { do: 'pair', exercise: 2 },
  { do: 'part-pair', exercise: 0 },
  { do: 'add-set' },
  { do: 'end-cluster' },
  { do: 'replace', exercise: 0, by: lighter, because: 'other-load' },
  { do: 'replace', exercise: 0, by: other, because: 'other-lift' },
  {
    do: 'shorten',
    minutes: 15,
    exercises: [
      { exercise: 0, sets: 2, rest },
      { exercise: 2, sets: 0, rest },
    ],
    restBetween: rest,
    cut: [],
  },
  { do: 'change-rest', by: 30 },
  { do: 'change-rest', by: -500 },
  { do: 'pause' },
  { do: 'resume' },
  { do: 'mark-pain', exercise: 0 },
  { do: 'mark-pain', exercise: 2 },
  { do: 'note', exercise: null, text: ' a note ' },
  { do: 'note', exercise: 0, text: ' ' },
  { do: 'undo' },
  { do: 'redo' },
  { do: 'close', how: 'finished' },
  { do: 'close', how: 'as-it-is' },
  { do: 'discard' },
];

const worded = (command: SessionCommand): string =>
  Object.entries(command)
    .flatMap(([key, value]) =>
      key === 'by' && typeof value === 'object'
        ? [value.name]
        : [typeof value === 'object' ? JSON.stringify(value) : String(value)],
    )
    .join(' ');

test.each(Object.entries(MOMENTS))('%s', async (name, make) => {
  const lines = COMMANDS.map((command) => {
    const session = make();
    const decided = decide(session.state(), command, session.now());
    if (!decided.ok) return `${worded(command)}: ${problemText(decided.problem)}`;
    const facts = decided.facts.map(({ type, ...fact }) => {
      const { prescription: _, by, ...told } = fact as Record<string, unknown>;
      const named = typeof by === 'object' ? {} : { by };
      return `${type} ${JSON.stringify({ ...told, ...named })}`;
    });
    session.send(command);
    const now = stageNow(session.state(), session.now());
    const place = now.kind === 'lifting' ? now.set : 'next' in now ? now.next : null;
    const aim = place && aimOf(session.state(), place);
    return `${worded(command)}: ${facts.join('; ')} → ${JSON.stringify(now)}, aim ${JSON.stringify(aim)}`;
  });
  await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot(
    `answers/${name.replaceAll(' ', '-')}.txt`,
  );
});
