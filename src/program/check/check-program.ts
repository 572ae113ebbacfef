import type { Gear } from '../../training/gear.ts';
import type { Facts } from '../../training/rule.ts';
import type { Place, Program } from '../program.ts';
import type { Found } from './check-rule.ts';
import { CHECK_RULES, type CheckRuleKey } from './check-rules.ts';
import { programFigures } from './figures.ts';

/** One place where a program does not keep a rule; the rule's own sentence says what was found. */
export interface Finding {
  readonly rule: CheckRuleKey;
  readonly severity: 'error' | 'advice';
  /** Null for the file as a whole. */
  readonly place: Place | null;
  readonly facts: Facts;
  /** What would mend it, one sentence in the program's unit. */
  readonly fix: string;
  /** Why the lifter has accepted it, in the file; null where they have not. */
  readonly accepted: string | null;
}

/** Everything about a program that the rules would have otherwise, in the order of the file. */
export function checkProgram(program: Program, gear: Gear): readonly Finding[] {
  const checked = {
    program,
    gear,
    figures: programFigures(program),
    exercises: program.days.flatMap(({ name, exercises }) =>
      exercises.map((exercise) => ({ exercise, day: name })),
    ),
    perWeek: program.daysPerWeek / program.days.length,
    known: CHECK_RULES.map(({ key }) => key),
  };
  return CHECK_RULES.flatMap((rule) =>
    rule.find(checked).map(({ exercise, ...found }: Found): Finding => {
      const accepted = exercise?.accept[rule.key] ?? program.accept[rule.key] ?? null;
      return { rule: rule.key, ...found, accepted };
    }),
  ).sort((a, b) => lineOf(a) - lineOf(b));
}

const lineOf = ({ place }: Finding): number => place?.line ?? 0;
