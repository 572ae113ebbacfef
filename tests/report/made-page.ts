import type { PageView } from '../../src/report/page-view.ts';
import type { Point } from '../../src/report/plot.ts';

const FIRST = 20_700;
const WEEKS = ['7 Sep', '14 Sep', '21 Sep', '28 Sep'];

const strength = (points: readonly Point[]) => ({
  line: points,
  gap: 7,
  bands: [{ edges: points.map(([x, y]) => [x, y * 0.97, y * 1.03] as const) }],
});

const points = (count: number, from: number, by: number): Point[] =>
  Array.from({ length: count }, (_, at) => [FIRST + at * 3, from + at * by + (at % 3) * 0.2]);

const table = (heading: string, values: readonly Point[]) => ({
  headings: ['day', heading],
  rows: values.map(([x, y]) => [String(x), y.toFixed(1)]),
});

/** A page of invented numbers with one of everything. */
export function madePage(): PageView {
  const [squat, bench, body] = [points(9, 120, 0.2), points(9, 90, -0.1), points(10, 85, -0.3)];
  const kept: Point[] = [
    [0, 100],
    [1, 99.5],
    [2, 98.9],
  ];
  return {
    program: 'Lean spring',
    made: '5 October 2026',
    unit: 'kg',
    headline: 'Go on as you are.',
    findings: [{ text: 'Four of six sessions were done.', source: 'common practice' }],
    figures: [{ name: 'Strength kept', value: '99 %', about: 'median of the compound lifts' }],
    body: {
      readings: body,
      trend: body.map(([x], at) => [x, 85 - at * 0.3]),
      band: {
        edges: [
          [FIRST, 85, 85],
          [FIRST + 27, 81.6, 83.3],
        ],
      },
      bandSays: '0.5–1 % a week',
      table: table('kg', body),
    },
    noBody: null,
    waist: null,
    kept: { points: kept, table: table('kept', kept) },
    lifts: [
      {
        name: 'Back squat',
        points: squat,
        strength: strength(squat),
        note: '101 % kept',
        table: table('e1RM', squat),
      },
      {
        name: 'Bench press',
        points: bench,
        strength: strength(bench),
        note: '99 % kept',
        table: table('e1RM', bench),
      },
    ],
    muscles: {
      weeks: WEEKS,
      band: [6, 10],
      muscles: [
        { name: 'Chest', sets: [6, 7.5, 8, 12.5] },
        { name: 'Quads', sets: [0, 9, 9, 9] },
      ],
      table: { headings: ['week', 'Chest', 'Quads'], rows: WEEKS.map((week) => [week, '8', '9']) },
    },
    caution: 'Not medical advice.',
  };
}
