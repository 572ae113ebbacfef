import type { SessionState } from '../../session/state.ts';
import type { Unit } from '../../training/mass.ts';
import { asPlannedTexts } from '../as-planned.ts';
import { type EntryTarget, entryTarget, fieldsOf, fieldText, setsPutDown } from '../entry.ts';
import { type Line, line, paragraph, type Span, span } from '../line.ts';
import type { Model } from '../model.ts';
import { draftOf } from '../outcome.ts';
import { type Phase, placeOf } from '../phase.ts';
import { setsOfRole } from '../set-plan.ts';
import type { Field, Typing } from '../ui-state.ts';
import { placeText, savedText } from '../words.ts';
import { exerciseEnd } from './exercise-end.ts';

/** What was saved, and the numbers that keys type over. */
export function entryLines(model: Model, phase: Phase, columns: number): Line[] {
  const { session } = model;
  if (!session) return [];
  const draft = draftOf(model);
  const target = entryTarget(session, phase, draft);
  const ended = (target ? exerciseEnd(session, target) : []).flatMap((text) =>
    paragraph(text, columns, 'strong'),
  );
  if (phase.kind === 'all-done' && !draft)
    return [...ended, ...plannedLines(session, columns, model.ui.message !== null)];
  if (!target) return [];
  const fields = fieldLine(target, draft, session.prescription.unit, columns);
  if (!target.of) return draft ? [fields, line('space puts it down with these')] : [];
  const typed = draft && Object.keys(draft.typed).length > 0;
  const saved = typed ? 'enter saves' : savedText(target.of, target.exercise);
  const name = setName(session, phase, target);
  return [...ended, ...paragraph(`${name} · ${saved}`, columns), fields];
}

/** Which set it is; the lift is named where it is not the one of the headline. */
function setName(session: SessionState, phase: Phase, { of, exercise }: EntryTarget): string {
  const state = of && session.exercises[of.exercise];
  if (!state) return exercise.name;
  const place = placeText(of, setsOfRole(state, of.role));
  const isHere =
    placeOf(phase)?.exercise === of.exercise && state.prescribed.track === exercise.track;
  return isHere ? place : `${exercise.name}, ${place}`;
}

/** The numbers of a set side by side, the one that keys change marked. */
export function fieldLine(
  target: EntryTarget,
  draft: Typing | null,
  unit: Unit,
  columns: number,
): Line {
  const focused = draft?.field ?? 'count';
  const wide = columns >= 56;
  const spans: Span[] = [];
  for (const field of fieldsOf(target.exercise)) {
    if (spans.length > 0) spans.push(span(wide ? '    ' : '  '));
    const text = fieldText(target, draft, field, unit);
    // The pointers mark the field where nothing can be reversed.
    if (field === focused) spans.push(span(`‹${text}›`, 'chosen'));
    else spans.push(span(wide ? ` ${text} ` : text, 'strong'));
    spans.push(span(` ${fieldName(field, target, unit, wide)}`));
  }
  return spans;
}

function fieldName(field: Field, { exercise }: EntryTarget, unit: Unit, wide: boolean): string {
  if (field === 'count') return exercise.counts;
  // Beside body weight the number is not what is lifted.
  const added = exercise.basis === 'added';
  if (field === 'load') return added ? (wide ? `${unit} added` : 'added') : unit;
  return wide ? 'in reserve' : 'reserve';
}

/** At the end: the sets that were never typed, for one confirming key; brief beside what the last key led to. */
function plannedLines(session: SessionState, columns: number, isBrief: boolean): Line[] {
  const planned = asPlannedTexts(session);
  if (planned.length === 0) {
    const any = setsPutDown(session).length > 0;
    return [line(any ? 'Every set has its own numbers.' : 'No set was done.')];
  }
  const keys = isBrief ? '' : ' Space says that they are right; b goes back to one.';
  return [
    ...paragraph(`Saved as planned.${keys}`, columns),
    ...planned.flatMap((text) => paragraph(text, columns, 'strong', 2)),
  ];
}
