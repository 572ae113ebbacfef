import type { SessionState } from '../../session/state.ts';
import { asPlannedTexts } from '../as-planned.ts';
import { type EntryTarget, entryTarget, fieldsOf, fieldText } from '../entry.ts';
import { type Line, line, paragraph, type Span, span } from '../line.ts';
import type { Phase } from '../phase.ts';
import { setsOfRole } from '../set-plan.ts';
import type { Draft, Field, Model } from '../ui-state.ts';
import { placeText, savedText } from '../words.ts';

/** What was saved, and the numbers that keys type over. */
export function entryLines(model: Model, phase: Phase, columns: number): Line[] {
  const { session, ui } = model;
  if (!session) return [];
  const draft = ui.screen.kind === 'runner' ? ui.screen.draft : null;
  if (phase.kind === 'all-done' && !draft) return plannedLines(session, columns);
  const target = entryTarget(session, phase, draft);
  if (!target) return [];
  const fields = fieldLine(target, draft, session, columns);
  if (!target.of) return draft ? [fields, hint('space puts it down with these')] : [];
  const typed = draft && Object.keys(draft.typed).length > 0;
  const which = setName(session, target);
  const saved = typed ? 'enter saves' : savedText(target.of, target.exercise);
  return [...paragraph(`${which} · ${saved}`, columns), fields];
}

const hint = (text: string): Line => line(text, 'plain');

function setName(session: SessionState, { of, exercise }: EntryTarget): string {
  const state = of && session.exercises[of.exercise];
  return state ? `${exercise.name}, ${placeText(of, setsOfRole(state, of.role))}` : exercise.name;
}

function fieldLine(
  target: EntryTarget,
  draft: Draft | null,
  session: SessionState,
  columns: number,
): Line {
  const { unit } = session.prescription;
  const focused = draft?.field ?? 'count';
  const spans: Span[] = [];
  for (const field of fieldsOf(target.exercise)) {
    if (spans.length > 0) spans.push(span(columns >= 60 ? '     ' : '  '));
    const text = fieldText(target, draft, field, unit);
    // The pointers mark the field where nothing can be reversed.
    spans.push(field === focused ? span(`‹${text}›`, 'chosen') : span(` ${text} `, 'strong'));
    spans.push(span(` ${fieldName(field, target, unit)}`));
  }
  return spans;
}

function fieldName(field: Field, { exercise }: EntryTarget, unit: string): string {
  if (field === 'count') return exercise.counts;
  return field === 'reserve' ? 'in reserve' : unit;
}

/** At the end: the sets that were never typed, for one confirming key. */
function plannedLines(session: SessionState, columns: number): Line[] {
  const planned = asPlannedTexts(session);
  if (planned.length === 0) return [line('Every set has its own numbers.')];
  return [
    ...paragraph('Saved as planned. Space says that they are right; b goes back to one.', columns),
    ...planned.flatMap((text) => paragraph(text, columns, 'strong', 2)),
  ];
}
