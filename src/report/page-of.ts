import type { Temporal } from 'temporal-polyfill';
import { CUT_LIMITS } from '../cut/cut-limits.ts';
import { keptOverTime } from '../cut/kept-over-time.ts';
import { weightBand } from '../cut/plan.ts';
import type { Review } from '../cut/review.ts';
import { mondayOf } from '../cut/work-done.ts';
import { dailyMasses } from '../journal/daily-mass.ts';
import type { History } from '../journal/history.ts';
import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { strengthOver } from '../progression/lift-strength.ts';
import type { Past } from '../progression/past.ts';
import { dayAndMonth, dayWords } from '../text/day-words.ts';
import { safeText } from '../text/safe-text.ts';
import { keyWords } from '../text/words.ts';
import { CAUTIONS } from '../training/cautions.ts';
import { dayNumber } from '../training/day-number.ts';
import { type LengthUnit, lengthIn, tapeOf } from '../training/length.ts';
import { inUnit, type Mass, massNumber, type Unit } from '../training/mass.ts';
import type { ReasonWords } from '../training/rule.ts';
import { countsText, e1rmPoints, loadsText, strengthPlot } from './history-text.ts';
import { type LiftSession, liftRows } from './lift-rows.ts';
import type {
  BodyPicture,
  KeptPicture,
  LiftPicture,
  MusclePicture,
  PageView,
  WaistPicture,
} from './page-view.ts';
import { keptWords, reviewFigures } from './review-figures.ts';

/** Everything that the exported page shows, from a history and its review. */
export function pageOf(
  history: Pick<
    History,
    'results' | 'sessions' | 'decisions' | 'weighIns' | 'waists' | 'bodyMassOn'
  >,
  review: Review,
  words: ReasonWords,
  unit: Unit,
): PageView {
  const { evidence, verdict, today } = review;
  const body = pictureOfBody(history, review, unit);
  return {
    program: safeText(evidence.program.name),
    made: dayWords(today),
    unit,
    headline: safeText(words(verdict.headline.reason).text),
    findings: verdict.below.map(({ reason }) => {
      const { text, source } = words(reason);
      return { text: safeText(text), source: safeText(source) };
    }),
    figures: reviewFigures(review, unit),
    body,
    noBody: body === null ? whyNoBody(history, review) : null,
    waist: pictureOfWaist(history, review, tapeOf(unit)),
    kept: pictureOfKept(history, review),
    lifts: picturesOfLifts(history, review, unit),
    muscles: pictureOfMuscles(review),
    caution: CAUTIONS[0] ?? '',
  };
}

/** Days before the cut that its picture begins with: the weight it began from. Ours. */
const DAYS_BEFORE = 28;
/** Without a cut there is no beginning: half a year is what can be read off. Ours. */
const DAYS_WITHOUT_CUT = 182;

/** Body weight with its trend and the planned range, from four weeks before the cut; null without a weigh-in or where none is to be shown. */
function pictureOfBody(
  { weighIns, bodyMassOn }: Pick<History, 'weighIns' | 'bodyMassOn'>,
  { body, evidence, today }: Review,
  unit: Unit,
): BodyPicture | null {
  const { cutFrom, program } = evidence;
  const from = pictureFrom(cutFrom, today);
  const days = dailyMasses(weighIns).flatMap(({ date, mass }) => {
    const isShown = dayNumber(date) >= dayNumber(from) && dayNumber(date) <= dayNumber(today);
    const trend = isShown ? bodyMassOn(date) : null;
    return trend === null
      ? []
      : [{ date, reading: inUnit(mass, unit), trend: inUnit(trend, unit) }];
  });
  if (body === null || days.length === 0) return null;
  const band = cutFrom ? weightBand(cutFrom, today, program.rate, bodyMassOn) : [];
  const lastOfWeeks = days.filter(({ date }, at) => {
    const next = days[at + 1];
    return !next || !mondayOf(next.date).equals(mondayOf(date));
  });
  return {
    readings: days.map(({ date, reading }) => [dayNumber(date), reading]),
    trend: days.map(({ date, trend }) => [dayNumber(date), trend]),
    band:
      band.length === 0
        ? null
        : {
            edges: band.map(({ date, low, high }) => [
              dayNumber(date),
              inUnit(low as Mass, unit),
              inUnit(high as Mass, unit),
            ]),
          },
    bandSays: `${program.rate[0]}–${program.rate[1]} % a week`,
    table: {
      headings: ['last weigh-in of the week', `reading, ${unit}`, `trend, ${unit}`],
      rows: lastOfWeeks.map(({ date, reading, trend }) => [
        date.toString(),
        reading.toFixed(1),
        trend.toFixed(1),
      ]),
    },
  };
}

function pictureOfWaist(
  { waists }: Pick<History, 'waists'>,
  { evidence, today }: Review,
  tape: LengthUnit,
): WaistPicture | null {
  const from = pictureFrom(evidence.cutFrom, today);
  const shown = waists.filter(({ date }) => dayNumber(date) >= dayNumber(from));
  if (!evidence.weightAdvice || shown.length < 2) return null;
  return {
    unit: tape,
    points: shown.map(({ date, length }) => [dayNumber(date), lengthIn(length, tape)]),
    table: {
      headings: ['day', `waist, ${tape}`],
      rows: shown.map(({ date, length }) => [date.toString(), lengthIn(length, tape).toFixed(1)]),
    },
  };
}

/** The first day that the picture of a cut shows. */
const pictureFrom = (cutFrom: Temporal.PlainDate | null, today: Temporal.PlainDate) =>
  cutFrom?.subtract({ days: DAYS_BEFORE }) ?? today.subtract({ days: DAYS_WITHOUT_CUT });

/** Why a page shows no body weight. */
function whyNoBody(
  { weighIns }: Pick<History, 'weighIns'>,
  { evidence }: Pick<Review, 'evidence'>,
): string {
  if (!evidence.weightAdvice)
    return 'Body weight is not shown: advice about weight is not switched on.';
  return weighIns.length === 0
    ? 'No body weight is shown: there is no weigh-in yet.'
    : 'No body weight is shown: no weigh-in is from these weeks.';
}

/** Strength kept against weight lost, week by week; null before both are known, or where weight is not to be shown. */
function pictureOfKept(past: Past, { body, evidence, today }: Review): KeptPicture | null {
  const atStart = body?.atStart;
  if (!evidence.cutFrom || !atStart) return null;
  const weeks = keptOverTime(past, evidence.cutFrom, today).flatMap(({ date, kept, body: mass }) =>
    kept === null || mass === null
      ? []
      : [{ date, kept: kept.share * 100, lost: (1 - mass / atStart) * 100 }],
  );
  if (weeks.length === 0) return null;
  return {
    points: weeks.map(({ kept, lost }) => [lost, kept]),
    table: {
      headings: ['day', 'weight lost, %', 'strength kept, %'],
      rows: weeks.map(({ date, kept, lost }) => [
        date.toString(),
        lost.toFixed(1),
        kept.toFixed(1),
      ]),
    },
  };
}

/** Hard sets a week of every muscle trained; null before the first. */
function pictureOfMuscles({ weeks, muscles, evidence }: Review): MusclePicture | null {
  if (muscles.length === 0) return null;
  const rows = muscles.map((muscle) => ({
    name: capital(keyWords(muscle)),
    sets: weeks.map(({ hardSets }) => Math.round((hardSets.get(muscle) ?? 0) * 100) / 100),
  }));
  return {
    weeks: weeks.map(({ from }) => dayAndMonth(from)),
    band: CHECK_LIMITS.weeklySets[evidence.program.aim],
    muscles: rows,
    table: {
      headings: ['week from', ...rows.map(({ name }) => name)],
      rows: weeks.map(({ from }, at) => [
        from.toString(),
        ...rows.map(({ sets }) => String(sets[at])),
      ]),
    },
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** e1RM of every lift trained in the last four weeks, those of the program first and in its order. */
function picturesOfLifts(past: Past, { evidence, today }: Review, unit: Unit): LiftPicture[] {
  const { results, bodyMassOn } = past;
  const since = dayNumber(today) - CUT_LIMITS.presentDays;
  const lately = new Set(
    results.filter(({ date }) => dayNumber(date) > since).map(({ exercise }) => exercise.lift),
  );
  const inProgram = evidence.program.days.flatMap(({ exercises }) =>
    exercises.map(({ lift }) => lift.key).filter((key) => lately.has(key)),
  );
  return [...new Set([...inProgram, ...lately])].flatMap((key) => {
    const rows = liftRows(results, key, bodyMassOn);
    const points = e1rmPoints(rows, unit);
    // Up to today, so that it ends at what the review tells.
    const strength = strengthPlot(strengthOver(past, key, today), rows, unit);
    const name = rows.at(-1)?.result.exercise.name;
    if (name === undefined || points.length === 0) return [];
    const kept = evidence.lifts.find(({ lift }) => lift === key);
    const note = kept?.state === 'known' ? `${keptWords(kept, evidence.weightAdvice)} kept` : '';
    return [{ name: safeText(name), points, strength, note, table: tableOf(rows, unit) }];
  });
}

const tableOf = (rows: readonly LiftSession[], unit: Unit): LiftPicture['table'] => ({
  headings: ['day', 'load', 'done', `e1RM, ${unit}`],
  rows: rows.map(({ result, best }) => [
    result.date.toString(),
    loadsText(result, unit),
    countsText(result),
    best === null ? '' : massNumber(Math.round(best) as Mass, unit, 1),
  ]),
});
