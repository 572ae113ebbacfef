import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { reasonWords } from '../lifter/rules.ts';
import type { Program } from '../program/program.ts';
import { type Draw, drawAt, type Lifters, middleOf } from '../rehearsal/draws.ts';
import { knownStrengths, ownGrowth } from '../rehearsal/known-strengths.ts';
import { LIFTER_KINDS, type LifterKindName } from '../rehearsal/lifter-model.ts';
import type { RehearsalOptions } from '../rehearsal/rehearse.ts';
import { jsonText } from '../text/json-text.ts';
import { type Problem, WrongUse } from '../text/problem.ts';
import { kilograms, type Mass, massText } from '../training/mass.ts';
import type { Call, Run } from './call.ts';
import { longWork } from './long-work.ts';
import { minutesOption, wholeNumber } from './operands.ts';
import { rehearseJson, type ToldRehearsal } from './rehearse-json.ts';
import { compareText, rehearseText } from './rehearse-text.ts';
import { tellProblems } from './tell-problems.ts';

const WEEKS = 12;

const DRAWS = 10;

/** In a cut, % of body weight a week: slow enough to keep muscle (Garthe 2011). */
const LOSS = 0.7;

/** Nothing faster is played, nor a way down further than this share of the start. Ours. */
const MOST_LOSS = 1.5;
const LEAST_LEFT = 0.75;

/** Before the first weigh-in. */
const BODY_MASS = kilograms(80);

type Options = Omit<RehearsalOptions, 'model'>;

/** Plays the program forward with simulated lifters, from next Monday on; two side by side where asked. */
export const run: Run = async (call) => {
  const lifter = openLifter(call.ports, call.global);
  const advised = lifter.settings().settings.weightAdvice === 'yes';
  const program = trainedAs(lifter.program(), advised);
  tellProblems(call, lifter);
  const before = lifter.journal().history().lately;
  const today = lifter.today();
  const minutes = minutesOption(call);
  const bodyMass = before.bodyMassOn(today) ?? BODY_MASS;
  const weeks = wholeNumber(String(call.options.weeks ?? WEEKS), '--weeks', 1, 104);
  const options: Options = {
    from: today.add({ days: (8 - today.dayOfWeek) % 7 }),
    ...(minutes === null ? {} : { minutes }),
    weeks,
    loss: lossOption(call, advised) ?? (program.aim === 'cut' ? LOSS : 0),
    seed: wholeNumber(String(call.options.seed ?? 1), '--seed', 0, 2 ** 31 - 1),
    gear: lifter.gear(),
    bodyMass,
    strengths: knownStrengths(before, today),
    before,
  };
  // Another kind than the lifter's own grows as that kind does.
  const own = call.options.lifter === undefined ? ownGrowth(before, today) : null;
  const lifters: Lifters = { kind: kindOption(call), own };
  const count = wholeNumber(String(call.options.draws ?? DRAWS), '--draws', 1, 200);
  const sides = comparedSides(call, lifter, { program, options }, advised);
  for (const side of sides) refuseTooFar(side, lifter.unit());
  const steps = sides.flatMap((side) =>
    Array.from({ length: count }, (_, at) => () => ({
      side,
      draw: drawAt(side.program, side.options, lifters, at),
    })),
  );
  const done = await longWork(call, 'Playing', inTurn(steps, count));
  const told = sides.map((side) =>
    toldOf(
      side,
      lifters,
      done.filter((each) => each.side === side).map(({ draw }) => draw),
    ),
  );
  const [first, second] = told;
  if (!first) return 1;
  const width = Math.min(100, call.ports.stdout.columns ?? 80);
  if (call.global.json) call.print(jsonText(rehearseJson(first, second ?? null)));
  else call.print(second ? compareText(first, second, width) : rehearseText(first, width));
  return 0;
};

/** A side of a comparison, or the only one. */
interface Side {
  readonly name: string;
  readonly program: Program;
  readonly options: Options;
}

function toldOf(
  { name, program, options }: Side,
  lifters: Lifters,
  draws: readonly Draw[],
): ToldRehearsal {
  const middle = middleOf(draws);
  const words = middle.missing.map((reason) => reasonWords(reason, program.unit).text);
  const leftOut = [...new Set(words)];
  return { name, program, options, lifters, draws, ...middle, leftOut };
}

/** The same lifter on both sides before the next one, so that a stop leaves pairs. */
const inTurn = <T>(steps: readonly T[], count: number): readonly T[] =>
  Array.from({ length: count }, (_, at) =>
    steps.filter((_step, index) => index % count === at),
  ).flat();

/** Who must not be led through a cut has one played as maintenance. */
const trainedAs = (program: Program, advised: boolean): Program =>
  advised || program.aim !== 'cut' ? program : { ...program, aim: 'maintain' };

/** What `--compare` names: rates, or programs. */
function comparedSides(
  { options: { compare }, ports, global }: Call,
  lifter: Lifter,
  own: Omit<Side, 'name'>,
  advised: boolean,
): readonly Side[] {
  if (compare === undefined) return [{ ...own, name: own.program.name }];
  const names = Array.isArray(compare) ? (compare as readonly string[]) : [String(compare)];
  if (names.length !== 2) {
    throw new WrongUse({
      what: `--compare has ${names.length === 1 ? 'one name' : `${names.length} names`}.`,
      why: 'It takes two programs, or two rates in percent a week.',
      fix: 'Write for example: holdfast rehearse --compare 0.5 1.0.',
    });
  }
  return names.map((name) => {
    const rate = percentOf(name);
    if (rate !== null) {
      const loss = checkedLoss(name, rate, '--compare', advised);
      return { name: `${rate} % a week`, program: own.program, options: { ...own.options, loss } };
    }
    const other = openLifter(ports, { ...global, data: lifter.folders.data, program: name });
    const program = trainedAs(other.program(), advised);
    return { ...own, name: program.name, program };
  });
}

function kindOption({ options }: Call): LifterKindName {
  const { lifter = 'trained' } = options;
  const kinds = Object.keys(LIFTER_KINDS) as LifterKindName[];
  const found = kinds.find((kind) => kind === lifter);
  if (found) return found;
  throw new WrongUse({
    what: `--lifter is "${lifter}".`,
    why: `It is one of ${kinds.join(', ')}.`,
  });
}

function percentOf(written: string): number | null {
  const text = written.trim().replace(',', '.').replace(/\s*%$/, '');
  return /^(\d+(\.\d+)?|\.\d+)$/.test(text) ? Number(text) : null;
}

function lossOption({ options }: Call, advised: boolean): number | null {
  const { loss } = options;
  if (loss === undefined) return null;
  const value = percentOf(String(loss));
  if (value !== null) return checkedLoss(String(loss), value, '--loss', advised);
  throw new WrongUse({
    what: `--loss is "${loss}".`,
    why: `It is the body weight lost in a week, a percentage from 0 to ${MOST_LOSS}.`,
    fix: 'Write for example: holdfast rehearse --loss 0.7.',
  });
}

function checkedLoss(written: string, value: number, option: string, advised: boolean): number {
  if (value > 0 && !advised) {
    throw new WrongUse({
      what: 'No loss of weight is played: advice about weight is not switched on.',
      fix: '"holdfast settings weight-advice" tells for whom it is not.',
    });
  }
  if (value <= MOST_LOSS) return value;
  throw new WrongUse({
    what: `${option} is "${written}".`,
    why: `Over ${MOST_LOSS} % of body weight a week is a case for a doctor, not for a program.`,
    fix: 'Write for example 0.7; 0.5 to 1 % a week is what keeps muscle.',
  });
}

/** A way down on which nobody should be led is not played. */
function refuseTooFar({ options: { loss, weeks, bodyMass } }: Side, unit: 'kg' | 'lb'): void {
  const share = (1 - loss / 100) ** weeks;
  if (share >= LEAST_LEFT) return;
  const end = massText(Math.round(bodyMass * share) as Mass, unit, 0);
  const problem: Problem = {
    what: `${weeks} weeks at ${loss} % lead from ${massText(bodyMass, unit, 0)} to ${end}.`,
    why: 'Over a quarter of body weight is lost with a doctor, in parts.',
    fix: 'Play fewer weeks with --weeks, or a smaller --loss.',
  };
  throw new WrongUse(problem);
}
