import { CLASH_WORDS, clashesOf, type PairClash, turnsOf } from '../../../training/pairing.ts';
import { at, type CheckRule } from '../check-rule.ts';
import { asPaired } from '../planned-work.ts';

/** Rules about exercises whose sets alternate. */
export const PAIR_RULES = [
  {
    key: 'pair-without-rest',
    standing: 'common practice',
    source:
      'common practice; that opposed lifts can alternate at the same work: Robbins 2010, JSCR 24:2873–2882, from memory',
    sentence: ({ lift, other, clash }) =>
      `${lift} and ${other} alternate, and ${CLASH_WORDS[clash as PairClash]}.`,
    find: ({ program }) =>
      program.days.flatMap(({ exercises }) =>
        turnsOf(exercises).flatMap((turn) =>
          turn.flatMap((exercise, index) =>
            turn.slice(0, index).flatMap((other) => {
              const [clash] = clashesOf(asPaired(other), asPaired(exercise));
              if (!clash) return [];
              const fix = 'Pair it with a lift of opposed muscles, or take pair: out.';
              return [at(exercise, 'advice', { other: other.lift.name, clash }, fix)];
            }),
          ),
        ),
      ),
  },
  {
    key: 'pair-of-one',
    standing: 'ours',
    source: 'ours',
    sentence: ({ lift, pair }) =>
      `${lift} has pair: ${pair}, and no other exercise of the day has it, so it is done by itself.`,
    find: ({ program }) =>
      program.days.flatMap(({ exercises }) =>
        turnsOf(exercises).flatMap(([exercise, ...others]) => {
          if (exercise?.pair === undefined || others.length > 0) return [];
          const fix = 'Write the same at the exercise that it alternates with, or take pair: out.';
          return [at(exercise, 'advice', { pair: exercise.pair }, fix)];
        }),
      ),
  },
] as const satisfies readonly CheckRule[];
