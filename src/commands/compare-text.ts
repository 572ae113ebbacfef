import { differenceOf } from '../rehearsal/draws.ts';
import { textTable } from '../report/table.ts';
import { wrapped } from '../text/columns.ts';
import { dayWords } from '../text/day-words.ts';
import { massText } from '../training/mass.ts';
import type { ToldRehearsal } from './rehearse-json.ts';
import { NOT_A_FORECAST, rehearsedWords } from './rehearse-text.ts';

/** Two rehearsals side by side, the same lifters in both, as lines of at most `width` columns. */
export function compareText(first: ToldRehearsal, second: ToldRehearsal, width: number): string {
  const both = [first, second];
  const { mean, error } = differenceOf(first.draws, second.draws);
  const rows: readonly (readonly [string, (told: ToldRehearsal) => string])[] = [
    ['strength kept', rehearsedWords],
    ['a week', ({ options }) => (options.loss > 0 ? `${options.loss} % lost` : 'weight steady')],
    ['session', ({ verdict }) => `${Math.round(verdict.minutes)} min`],
    ['sets a week', ({ verdict: { muscles } }) => setsWords(muscles.map((each) => each.mean))],
    ['lighter weeks', ({ verdict }) => String(verdict.lighterWeeks)],
    [
      'body weight',
      ({ weeks, program }) => {
        const mass = weeks.findLast(({ bodyMass }) => bodyMass !== null)?.bodyMass;
        return mass ? massText(mass, program.unit, 1) : '';
      },
    ],
  ];
  const points = (share: number) => Math.abs(share * 100).toFixed(1);
  const verdict =
    Math.abs(mean) < 2 * error
      ? `No difference that these ${first.draws.length} lifters could tell: ${points(mean)} points of strength, standard error ${points(error)}.`
      : `${(mean > 0 ? second : first).name} keeps ${points(mean)} points of strength more (standard error ${points(error)} over ${first.draws.length} lifters).`;
  return [
    ...wrapped(
      `${first.name} and ${second.name} · ${first.weeks.length} weeks from ${dayWords(first.options.from)}`,
      width,
    ),
    ...wrapped(NOT_A_FORECAST, width),
    '',
    ...textTable(
      [
        { heading: '', align: 'left' },
        ...both.map(({ name }) => ({ heading: name, align: 'left' as const })),
      ],
      rows.map(([name, tell]) => [name, ...both.map(tell)]),
      width,
    ),
    '',
    ...wrapped(verdict, width),
  ].join('\n');
}

const setsWords = (means: readonly number[]): string =>
  means.length === 0
    ? ''
    : `${Math.min(...means).toFixed(1)} to ${Math.max(...means).toFixed(1)} a muscle`;
