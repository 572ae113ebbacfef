import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import type { Finding } from '../program/check/check-program.ts';
import { programFigures } from '../program/check/figures.ts';
import type { Program } from '../program/program.ts';
import { columnsOf, wrapped } from '../text/columns.ts';
import { safeText } from '../text/safe-text.ts';
import { keyWords } from '../text/words.ts';
import { barRows } from './bar-rows.ts';
import type { TextSize } from './review-text.ts';
import { textTable } from './table.ts';

/** A finding in words. */
export interface ToldFinding extends Finding {
  readonly text: string;
  readonly source: string;
}

/** Findings as `file:line:column`, each with what would mend it; then what the program comes to. */
export function checkText(
  program: Program,
  findings: readonly ToldFinding[],
  size: TextSize,
): string[] {
  const open = findings.filter(({ accepted }) => accepted === null);
  const accepted = findings.filter((finding) => finding.accepted !== null);
  return [
    ...open.flatMap((finding, at) => {
      const isFirst = open.findIndex(({ rule }) => rule === finding.rule) === at;
      return findingLines(program.file, finding, isFirst, size.width);
    }),
    ...(open.length > 0 ? [''] : []),
    countLine(open),
    ...accepted.flatMap(({ rule, accepted: reason }) =>
      wrapped(`Accepted: ${rule}, "${safeText(reason ?? '')}".`, size.width, '  '),
    ),
    '',
    ...figureLines(program, size),
  ];
}

/** The source of a rule stands at its first finding. */
function findingLines(
  file: string,
  finding: ToldFinding,
  isFirst: boolean,
  width: number,
): string[] {
  const { place, severity, text, fix, rule, source } = finding;
  const where = place ? `${file}:${place.line}:${place.column}` : file;
  return [
    ...wrapped(`${safeText(where)}: ${severity}: ${safeText(text)}`, width, '  '),
    ...wrapped(safeText(fix), width - 2).map(inside),
    ...wrapped(isFirst ? `(${rule}: ${source})` : `(${rule})`, width - 2).map(inside),
  ];
}

const inside = (line: string): string => `  ${line}`;

function countLine(open: readonly Finding[]): string {
  if (open.length === 0) return 'No findings: the program fits its aim.';
  const errors = open.filter(({ severity }) => severity === 'error').length;
  const counted = (count: number, one: string, more: string) =>
    `${count} ${count === 1 ? one : more}`;
  return `${counted(errors, 'error', 'errors')}, ${counted(open.length - errors, 'advice', 'pieces of advice')}.`;
}

/** Columns that bars beside the table need, to tell anything. */
const LEAST_FOR_BARS = 60;

/** Hard sets a muscle against those aimed at, days trained, minutes a day. */
function figureLines(program: Program, { width, glyphs }: TextSize): string[] {
  const { muscles, days } = programFigures(program);
  const band = CHECK_LIMITS.weeklySets[program.aim];
  const [heading = '', ...rows] = textTable(
    [
      { heading: 'muscle', align: 'left' },
      { heading: 'hard sets', align: 'right' },
      { heading: 'days', align: 'right' },
      { heading: 'direct', align: 'right', dropFirst: 1 },
    ],
    muscles.map(({ muscle, hardSets, days: trained, directDays }) => [
      keyWords(muscle),
      String(hardSets),
      String(trained),
      String(directDays),
    ]),
    width,
  );
  const bars = barRows(
    muscles.map(({ hardSets }) => ({ label: '', value: hardSets, text: '' })),
    band,
    width - columnsOf(heading),
    glyphs,
  );
  const byDay = textTable(
    [
      { heading: 'day', align: 'left' },
      { heading: 'minutes', align: 'right' },
      { heading: 'sets', align: 'right' },
    ],
    days.map(({ name, minutes, sets }) => [safeText(name), String(minutes), String(sets)]),
    width,
  );
  return [
    ...wrapped(
      `In the average week (aim: ${program.aim}, ${band[0]}–${band[1]} hard sets):`,
      width,
    ),
    '',
    heading,
    ...rows.map((row, at) => (width < LEAST_FOR_BARS ? row : `${row} ${bars[at]}`.trimEnd())),
    '',
    ...byDay,
  ];
}
