import { partnersOf, plannedSets } from '../../session/next-set.ts';
import { ownRestLeft } from '../../session/pairs.ts';
import type { SessionState } from '../../session/state.ts';
import { columnsOf, cutTo } from '../../text/columns.ts';
import { rangeText } from '../../text/durations.ts';
import type { Reading } from '../../training/reading.ts';
import { type Line, line, paragraph } from '../line.ts';
import { type Phase, placeOf } from '../phase.ts';
import { plannedSet } from '../set-plan.ts';
import { countdownText, countText, loadText } from '../words.ts';
import { lacksGear } from './conditions.ts';

/** Of a pair the lifts that wait: which set is due next of each, and when its own rest is over. */
export function waitingLines(
  session: SessionState,
  phase: Phase,
  now: Reading,
  columns: number,
): Line[] {
  const place = placeOf(phase);
  if (!place) return [];
  return partnersOf(session, place.exercise).flatMap((at) => {
    const waits = session.exercises[at];
    if (!waits) return [];
    const left = ownRestLeft(waits, session.pausedSince ?? now)?.from ?? 0;
    const set = `set ${waits.done.length + waits.skipped + 1} of ${plannedSets(waits)}`;
    const when = left > 0 ? countdownText(left * 1000) : 'rested';
    return [line(waitingText(waits.prescribed.name, `${set} · ${when}`, columns))];
  });
}

/** What is on the right stays whole; first the words before the name give way, then its end. */
function waitingText(name: string, rest: string, columns: number): string {
  const fitting = [`in turn ${name} · ${rest}`, `${name} · ${rest}`].find(
    (text) => columnsOf(text) <= columns,
  );
  return fitting ?? `${cutTo(name, Math.max(1, columns - columnsOf(rest) - 1))} ${rest}`;
}

/** During a rest: what the next set asks for, since the digits show the time. */
export function nextLines(session: SessionState, phase: Phase, columns: number): Line[] {
  const place = placeOf(phase);
  if (phase.kind !== 'resting' || !place) return [];
  const plan = plannedSet(session, place);
  const state = session.exercises[place.exercise];
  if (!plan || !state || place.role === 'mini') return [];
  const { prescribed: exercise } = state;
  if (lacksGear(state)) return paragraph('next: another lift to choose, space asks', columns);
  if (plan.load === null) return paragraph('next: a load to choose, c asks for it', columns);
  const load = `${loadText(plan.load, exercise, session.prescription.unit)} × `;
  const words = `next ${load}${countText(plan.count, exercise)}`;
  const full = plan.reserve ? `${words}, ${rangeText(plan.reserve)} in reserve` : words;
  return paragraph(full.length <= columns ? full : words, columns, 'plain', 5);
}
