import { openLifter } from '../lifter/open-lifter.ts';
import { type FindingWords, findingsOf } from '../lifter/rules.ts';
import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import { programFigures } from '../program/check/figures.ts';
import { fileProblemText } from '../program/file-problem.ts';
import type { Program } from '../program/program.ts';
import { readProgram } from '../program/read-program.ts';
import { checkText } from '../report/check-text.ts';
import { jsonText } from '../text/json-text.ts';
import { Refusal } from '../text/problem.ts';
import type { Run } from './call.ts';
import type { CheckJson } from './check-schema.ts';
import { isStdin, readStdin } from './read-stdin.ts';
import { textSize } from './text-size.ts';

/**
 * Says what of a program fits its aim and what does not. Exit 1 on errors, with `--strict` on
 * anything that was not accepted in the file; 2 when the file cannot be read.
 */
export const run: Run = async (call) => {
  const [file = call.global.program] = call.args;
  const typed = isStdin(file) ? await readStdin(call) : null;
  const asked = typed === null ? file : null;
  const lifter = openLifter(call.ports, { ...call.global, program: asked });
  const program = typed === null ? lifter.program() : programOf(typed);
  const findings = findingsOf(program, lifter.gear());
  if (call.global.json) call.print(jsonText(checkJson(program, findings)));
  else call.print(checkText(program, findings, textSize(call.ports)).join('\n'));
  const isStrict = call.options.strict === true;
  const counts = findings.filter(
    ({ severity, accepted }) => accepted === null && (isStrict || severity === 'error'),
  );
  return counts.length > 0 ? 1 : 0;
};

function programOf(text: string): Program {
  const read = readProgram(text, 'stdin');
  if (read.ok) return read.program;
  throw new Refusal(...read.problems.map((problem) => ({ what: fileProblemText(problem) })));
}

function checkJson(program: Program, findings: readonly FindingWords[]): CheckJson {
  const { muscles, days } = programFigures(program);
  return {
    schema: 1,
    file: program.file,
    program: program.name,
    aim: program.aim,
    findings: findings.map(({ rule, severity, place, text, fix, source, accepted }) => ({
      rule,
      severity,
      place,
      text,
      fix,
      source,
      accepted,
    })),
    muscles: muscles.map(({ muscle, hardSets, days: trained, directDays }) => ({
      muscle,
      hard_sets: hardSets,
      days: trained,
      direct_days: directDays,
    })),
    weekly_sets: [...CHECK_LIMITS.weeklySets[program.aim]],
    days: days.map(({ name, minutes, sets }) => ({ name, minutes, sets })),
  };
}
