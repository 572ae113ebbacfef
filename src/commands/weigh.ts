import { Temporal } from 'temporal-polyfill';
import { waistDoubt } from '../cut/waist-doubt.ts';
import { weighInDoubt } from '../cut/weigh-in-doubt.ts';
import {
  keepReadings,
  rateAsked,
  readingsText,
  replacedWords,
  trendWords,
} from '../lifter/keep-weigh-in.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { MOST } from '../session/decisions/lifting.ts';
import { dayWords } from '../text/day-words.ts';
import { jsonText } from '../text/json-text.ts';
import { problemText, Refusal, WrongUse } from '../text/problem.ts';
import {
  type Length,
  type LengthUnit,
  lengthIn,
  lengthText,
  readLength,
  tapeOf,
  WAIST_LIMITS,
} from '../training/length.ts';
import { inUnit, type Mass, massOf, massText, type Unit } from '../training/mass.ts';
import type { Call, Run } from './call.ts';
import { massOperand } from './operands.ts';
import { readDay } from './read-day.ts';
import type { WeighJson } from './weigh-schema.ts';

/**
 * Records a weigh-in, a waist reading or both, and says what the trend makes of it. Exit 1 for a
 * reading in doubt, which is not recorded.
 */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, call.global);
  const unit = unitAsked(call, lifter);
  const tape = tapeOf(unit);
  const date = dateAsked(call, lifter.today());
  const waist = waistAsked(call, unit);
  const [typed] = call.args;
  if (typed === undefined && waist === null) {
    throw new WrongUse({
      what: '<mass> is missing.',
      fix: 'For example: holdfast weigh 82.4. The waist alone does, too: --waist 86.',
    });
  }
  const mass = typed === undefined ? null : massAsked(typed, unit);
  const { weighIns, waists } = lifter.journal().history();
  const doubts = [
    mass === null ? null : weighInDoubt(mass, date, weighIns, unit),
    waist === null ? null : waistDoubt(waist, date, waists, waistUnit(call, tape)),
  ].filter((doubt) => doubt !== null);
  if (doubts.length > 0 && call.options.sure !== true) {
    const said = doubts.map(({ problem }) => problemText(problem));
    call.warn(`${said.join(' ')} With --sure it is recorded as it is.`);
    return 1;
  }
  const readings = { mass, length: waist };
  const kept = keepReadings(lifter.journal(), readings, date);
  const history = lifter.journal().history();
  const trend = history.bodyMassOn(date);
  const asked = rateAsked(lifter, date, lifter.settings().settings);
  const json: WeighJson = {
    schema: 1,
    unit,
    date: date.toString(),
    mass: mass === null ? null : inUnit(mass, unit),
    trend: trend === null ? null : Number(inUnit(trend, unit).toFixed(2)),
    waist: waist === null ? null : lengthIn(waist, tape),
    waist_unit: tape,
  };
  const words = mass === null ? null : trendWords(history, date, unit, asked);
  call.print(
    call.global.json
      ? jsonText(json)
      : [
          `Saved: ${readingsText(readings, unit)} on ${dayWords(date)}.`,
          replacedWords(kept, unit),
          words,
        ]
          .filter(Boolean)
          .join(' '),
  );
  return 0;
};

function massAsked(typed: string, unit: Unit): Mass {
  const mass = massOf(massOperand(typed, unit));
  if (mass > 0 && mass <= MOST.load) return mass;
  throw new Refusal({
    what: `Nobody weighs ${massText(mass, unit)}.`,
    fix: 'Type what the scales say.',
  });
}

/** What the tape says; null where it was not asked to be recorded. */
function waistAsked({ options }: Call, unit: Unit): Length | null {
  if (typeof options.waist !== 'string') return null;
  const tape = tapeOf(unit);
  const read = readLength(options.waist, tape);
  if (!read) {
    throw new WrongUse({
      what: `--waist is "${options.waist}".`,
      why: `It is a length, in ${tape} where it names no unit: 86, 86.5cm or 34in.`,
    });
  }
  if (read.length >= WAIST_LIMITS[0] && read.length <= WAIST_LIMITS[1]) return read.length;
  throw new Refusal({
    what: `A waist of ${lengthText(read.length, read.unit)} is none.`,
    fix: `Type what the tape says, in ${tape} or with its unit: 86cm, 34in.`,
  });
}

/** The unit that the waist was typed in, else the lifter's own. */
const waistUnit = ({ options }: Call, tape: LengthUnit): LengthUnit =>
  readLength(String(options.waist), tape)?.unit ?? tape;

function unitAsked({ options }: Call, lifter: Lifter): Unit {
  const asked = options.unit;
  if (asked === undefined) return lifter.unit();
  if (asked === 'kg' || asked === 'lb') return asked;
  throw new WrongUse({ what: `--unit is "${asked}".`, why: 'It is kg or lb.' });
}

function dateAsked({ options }: Call, today: Temporal.PlainDate): Temporal.PlainDate {
  const asked = options.date;
  if (typeof asked !== 'string') return today;
  const date = readDay(asked, '--date', today);
  if (Temporal.PlainDate.compare(date, today) > 0) {
    throw new Refusal({
      what: `${dayWords(date)} is yet to come.`,
      fix: 'A weigh-in is of today or of a day past.',
    });
  }
  if (date.year < EARLIEST_YEAR) {
    throw new Refusal({
      what: `${date.toString()} is before the year ${EARLIEST_YEAR}.`,
      fix: 'Write the day of the weigh-in.',
    });
  }
  return date;
}

/** Nobody has weigh-ins of before, and the journal keeps none. */
const EARLIEST_YEAR = 1950;
