import { Temporal } from 'temporal-polyfill';
import { weighInDoubt } from '../cut/weigh-in-doubt.ts';
import { keepWeighIn, rateAsked, replacedWords, trendWords } from '../lifter/keep-weigh-in.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { MOST } from '../session/decisions/lifting.ts';
import { dayWords } from '../text/day-words.ts';
import { jsonText } from '../text/json-text.ts';
import { problemText, Refusal, WrongUse } from '../text/problem.ts';
import { inUnit, massOf, massText, type Unit } from '../training/mass.ts';
import type { Call, Run } from './call.ts';
import { massOperand } from './mass-operand.ts';
import { readDay } from './read-day.ts';
import type { WeighJson } from './weigh-schema.ts';

/** Records a weigh-in and says what the trend makes of it. Exit 1 for a reading in doubt, which is not recorded. */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, call.global);
  const unit = unitAsked(call, lifter);
  const mass = massOf(massOperand(call.args[0] ?? '', unit));
  if (mass <= 0 || mass > MOST.load) {
    throw new Refusal({
      what: `Nobody weighs ${massText(mass, unit)}.`,
      fix: 'Type what the scales say.',
    });
  }
  const date = dateAsked(call, lifter.today());
  const { weighIns } = lifter.journal().history();
  const doubt = weighInDoubt(mass, date, weighIns, unit);
  if (doubt && call.options.sure !== true) {
    call.warn(`${problemText(doubt.problem)} With --sure it is recorded as it is.`);
    return 1;
  }
  const { replaced } = keepWeighIn(lifter.journal(), mass, date);
  const history = lifter.journal().history();
  const trend = history.bodyMassOn(date);
  const asked = rateAsked(lifter, date, lifter.settings().settings);
  const words = trendWords(history, date, unit, asked);
  const json: WeighJson = {
    schema: 1,
    unit,
    date: date.toString(),
    mass: inUnit(mass, unit),
    trend: trend === null ? null : Number(inUnit(trend, unit).toFixed(2)),
  };
  call.print(
    call.global.json
      ? jsonText(json)
      : [
          `Saved: ${massText(mass, unit)} on ${dayWords(date)}.`,
          replacedWords(replaced, unit),
          words,
        ]
          .filter(Boolean)
          .join(' '),
  );
  return 0;
};

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
