import type { Temporal } from 'temporal-polyfill';
import type { Program } from '../program/program.ts';
import type { Past } from '../progression/past.ts';
import { pauseBefore, pauseOn } from './aim-in-force.ts';
import { daysBetween } from './cut-start.ts';
import type { DatedMass } from './daily-mass.ts';
import type { RateQuestion } from './rate-of-loss.ts';

/**
 * What the rate of loss is read from, the same for everyone who tells it. Water comes back in a
 * pause and goes again: after one, as within, the rate is read anew, as from the cut's beginning.
 * @param cutFrom null outside a cut
 */
export function rateQuestion(
  {
    program,
    past,
    weighIns,
    today,
  }: {
    readonly program: Pick<Program, 'monthlyCycle'>;
    readonly past: Pick<Past, 'decisions' | 'bodyMassOn'>;
    readonly weighIns: readonly DatedMass[];
    readonly today: Temporal.PlainDate;
  },
  cutFrom: Temporal.PlainDate | null,
): RateQuestion {
  const { decisions, bodyMassOn } = past;
  const since =
    pauseOn(decisions, today)?.from ?? pauseBefore(decisions, today)?.until.add({ days: 1 });
  const anew = cutFrom && since && daysBetween(cutFrom, since) > 0 ? since : cutFrom;
  return { weighIns, today, cutFrom: anew, monthlyCycle: program.monthlyCycle, bodyMassOn };
}
