import type { SessionState } from '../../session/state.ts';
import { rangeText } from '../../text/durations.ts';
import { type Line, paragraph } from '../line.ts';
import { type Phase, placeOf } from '../phase.ts';
import { plannedSet } from '../set-plan.ts';
import { countText, loadText } from '../words.ts';

/** During a rest: what the next set asks for, since the digits show the time. */
export function nextLines(session: SessionState, phase: Phase, columns: number): Line[] {
  const place = placeOf(phase);
  if (phase.kind !== 'resting' || !place) return [];
  const plan = plannedSet(session, place);
  const exercise = session.exercises[place.exercise]?.prescribed;
  if (!plan || !exercise || place.role === 'mini') return [];
  if (plan.load === null) return paragraph('next: a load to choose, c asks for it', columns);
  const load = `${loadText(plan.load, exercise, session.prescription.unit)} × `;
  const words = `next ${load}${countText(plan.count, exercise)}`;
  const full = plan.reserve ? `${words}, ${rangeText(plan.reserve)} in reserve` : words;
  return paragraph(full.length <= columns ? full : words, columns, 'plain', 5);
}
