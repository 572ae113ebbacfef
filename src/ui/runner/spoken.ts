import { asPlannedTexts } from '../as-planned.ts';
import { entryTarget, fieldText } from '../entry.ts';
import { textOf } from '../line.ts';
import type { Model } from '../model.ts';
import { draftOf, type Seen } from '../outcome.ts';
import { OPEN } from '../page.ts';
import { type Phase, placeOf } from '../phase.ts';
import { testSetWords } from '../set-plan.ts';
import { savedText, secondsText } from '../words.ts';
import { exerciseEnd } from './exercise-end.ts';
import { headline } from './headline.ts';
import { implementLines } from './implement.ts';
import { nextLines, waitingLines } from './next-lines.ts';

/**
 * The runner as sentences. They change when something happens, never because a second went by: a
 * screen reader would read out every one.
 */
export function runnerTexts({ model, phase, coach }: Seen): readonly string[] {
  const { session } = model;
  if (!session || !phase) return [];
  const { word, title, place, caption } = headline(model, phase);
  const name = [title, place].filter(Boolean).join(', ');
  const change = implementLines(session, phase, coach, OPEN).map(textOf);
  const waiting = waitingLines(session, phase, model.now, OPEN).map(textOf);
  const at = placeOf(phase);
  const exercise = at && session.exercises[at.exercise];
  const test = exercise ? [testSetWords(exercise, at)].filter((each) => each !== null) : [];
  if (session.pausedSince) return [`Paused. ${name}.`, 'Space goes on.'];
  if (phase.kind === 'all-done') {
    const planned = asPlannedTexts(session);
    const target = entryTarget(session, phase, null);
    const ended = target ? exerciseEnd(session, target) : [];
    return [
      ...ended,
      'Every set is done.',
      ...(planned.length > 0 ? ['Saved as planned:'] : []),
      ...planned,
    ];
  }
  if (phase.kind === 'resting') {
    const next = nextLines(session, phase, OPEN).map(textOf);
    const last = phase.lastOne ? ['Last one.'] : [];
    return [
      ...savedTexts(model, phase),
      restMoment(phase),
      ...last,
      `Next: ${name}.`,
      ...test,
      ...next,
      ...change,
      ...waiting,
    ];
  }
  const [first] = caption;
  return [
    ...savedTexts(model, phase),
    `${word}. ${name}.`,
    first ?? '',
    ...test,
    ...change,
    ...waiting,
  ];
}

/** The start, the half, ten seconds and the ends of a rest, each once. */
function restMoment({
  running,
  elapsedMs,
  end,
  leftMs,
}: Extract<Phase, { kind: 'resting' }>): string {
  const { from, to } = running.rest;
  if (end === 'late') return 'Ready: lift when you are.';
  if (leftMs <= 10_000 && from > 20) return 'Ten seconds.';
  if (elapsedMs >= from * 500 && from > 40) return 'Half of the rest is over.';
  const latest = to > from ? `, at most ${secondsText(to)}` : '';
  return `Rest for ${secondsText(from)}${latest}.`;
}

function savedTexts(model: Model, phase: Phase): readonly string[] {
  const { session } = model;
  const draft = draftOf(model);
  const target = session && entryTarget(session, phase, draft);
  if (!session || !target) return [];
  if (draft) {
    const text = fieldText(target, draft, draft.field, session.prescription.unit);
    const field = {
      count: target.exercise.counts,
      reserve: 'in reserve',
      load: session.prescription.unit,
    };
    return [`${text} ${field[draft.field]}`];
  }
  if (!target.of) return [];
  const saved = `${target.exercise.name} ${savedText(target.of, target.exercise)}.`;
  return [saved, ...exerciseEnd(session, target)];
}
