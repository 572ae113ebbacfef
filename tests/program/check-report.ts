import type { Finding } from '../../src/program/check/check-program.ts';
import { checkProgram } from '../../src/program/check/check-program.ts';
import { CHECK_RULES } from '../../src/program/check/check-rules.ts';
import { fileProblemText } from '../../src/program/file-problem.ts';
import type { Program } from '../../src/program/program.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import type { Gear } from '../../src/training/gear.ts';

/** The program of a text; fails with its problems. */
export function programOf(text: string): Program {
  const read = readProgram(text, 'plan.yaml');
  if (!read.ok) throw new Error(read.problems.map(fileProblemText).join('\n'));
  return read.program;
}

/** A usual home gym, with safeties. */
export const aHomeGym = (changes: Partial<Gear> = {}): Gear => ({
  ...defaultGear('kg'),
  safeties: true,
  ...changes,
});

export function check(text: string, gear: Gear = aHomeGym()): readonly Finding[] {
  return checkProgram(programOf(text), gear);
}

/** Findings of one rule, as the lifter reads them. */
export function said(rule: string, text: string, gear?: Gear): readonly string[] {
  const program = programOf(text);
  return check(text, gear)
    .filter((finding) => finding.rule === rule)
    .map((finding) => {
      const { sentence } = CHECK_RULES.find(({ key }) => key === finding.rule) ?? {};
      return `${finding.severity}: ${sentence?.(finding.facts, program.unit)} ${finding.fix}`;
    });
}

/** A program of days; each day is a list of exercises in YAML's short form. */
export function plan(
  days: Readonly<Record<string, readonly string[]>>,
  head = 'days_per_week: 3',
): string {
  const lines = Object.entries(days).flatMap(([name, exercises]) => [
    `  - name: ${name}`,
    '    exercises:',
    ...exercises.map((exercise) => `      - { ${exercise} }`),
  ]);
  return ['name: Plan', 'unit: kg', head, 'days:', ...lines, ''].join('\n');
}
