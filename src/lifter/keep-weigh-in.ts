import type { Temporal } from 'temporal-polyfill';
import { cutStart } from '../cut/cut-start.ts';
import { type RateQuestion, rateErrorText, rateOfLoss, rateQuestion } from '../cut/rate-of-loss.ts';
import { waistsReplacedBy } from '../cut/waist-doubt.ts';
import { replacedBy, weighInDoubt } from '../cut/weigh-in-doubt.ts';
import type { Journal } from '../journal/disk/journal.ts';
import type { History, WaistReading, WeighIn } from '../journal/history.ts';
import type { Program } from '../program/program.ts';
import type { Settings } from '../settings/settings.ts';
import { Refusal } from '../text/problem.ts';
import { andText } from '../text/words.ts';
import { type Length, lengthText, tapeOf } from '../training/length.ts';
import { type Mass, massText, type Unit } from '../training/mass.ts';
import type { Lifter } from './open-lifter.ts';

/** What the scales and the tape say; null where it was not read. */
interface Readings {
  readonly mass: Mass | null;
  readonly length: Length | null;
}

/**
 * Records a weigh-in, a waist reading or both; a reading of the same day that cannot be right beside
 * it is taken out, and so are the weigh-ins that it corrects. Gives the ids of all that was recorded,
 * and what was taken out.
 */
export function keepReadings(
  journal: Journal,
  { mass, length }: Readings,
  day: Temporal.PlainDate,
  corrected: readonly WeighIn[] = [],
) {
  const { weighIns, waists: measured } = journal.history();
  const on = day.toString();
  const facts: Parameters<Journal['record']>[0][] = [];
  let masses: readonly WeighIn[] = [];
  let waists: readonly WaistReading[] = [];
  if (mass !== null) {
    const wrong = new Set(corrected.map(({ id }) => id));
    const others = weighIns.filter(({ id }) => !wrong.has(id));
    masses = [...corrected, ...replacedBy(mass, day, others)];
    // Who keeps a reading that is asked about has said that it is right.
    const isDoubted = weighInDoubt(mass, day, others, 'kg') !== null;
    facts.push({ type: 'weighed', mass, on, ...(isDoubted && { sure: true }) });
  }
  if (length !== null) {
    waists = waistsReplacedBy(length, day, measured);
    facts.push({ type: 'waist-measured', length, on });
  }
  for (const { id: of } of [...masses, ...waists]) facts.push({ type: 'deleted', of });
  return { ids: facts.map((fact) => journal.record(fact).id), masses, waists };
}

/** `82.4 kg, waist 86 cm`. */
export function readingsText({ mass, length }: Readings, unit: Unit): string {
  return [
    ...(mass === null ? [] : [massText(mass, unit)]),
    ...(length === null ? [] : [`waist ${lengthText(length, tapeOf(unit))}`]),
  ].join(', ');
}

/** Empty where nothing was replaced. */
export function replacedWords(
  { masses, waists }: Pick<ReturnType<typeof keepReadings>, 'masses' | 'waists'>,
  unit: Unit,
): string {
  const told = [
    ...masses.map(({ mass }) => massText(mass, unit)),
    ...waists.map(({ length }) => `waist of ${lengthText(length, tapeOf(unit))}`),
  ];
  return told.length === 0 ? '' : `It replaces the ${andText(told)} of the same day.`;
}

/** The rate as the review reads it, on a day; null for who gets no advice on weight. */
export function rateAsked(
  lifter: Lifter,
  today: Temporal.PlainDate,
  { weightAdvice }: Pick<Settings, 'weightAdvice'>,
): RateQuestion | null {
  if (weightAdvice !== 'yes') return null;
  const past = lifter.journal().history();
  const { weighIns, sessions } = past;
  const program = programOrNull(lifter);
  const cutFrom = program && cutStart(program, sessions, today);
  return rateQuestion(
    { program: program ?? { monthlyCycle: false }, past, weighIns, today },
    cutFrom,
  );
}

/** Weight is kept whatever is wrong with the program. */
function programOrNull(lifter: Lifter): Program | null {
  try {
    return lifter.program();
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/**
 * `Trend 79.4 kg, falling by 0.7 % a week (± 0.1).`; without the rate for who gets no advice on
 * weight, and null before the first weigh-in.
 */
export function trendWords(
  { bodyMassOn }: Pick<History, 'bodyMassOn'>,
  on: Temporal.PlainDate,
  unit: Unit,
  asked: RateQuestion | null,
): string | null {
  const trend = bodyMassOn(on);
  if (trend === null) return null;
  const words = `Trend ${massText(trend, unit, 1)}`;
  if (!asked) return `${words}.`;
  const rate = rateOfLoss(asked);
  if (rate.kind === 'unknown') return `${words}.`;
  const direction = rate.percentAWeek >= 0 ? 'falling' : 'rising';
  return `${words}, ${direction} by ${Math.abs(rate.percentAWeek).toFixed(1)} % a week (± ${rateErrorText(rate.standardError)}).`;
}
