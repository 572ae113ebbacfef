import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { barRows } from '../../src/report/bar-rows.ts';
import { dateTicks } from '../../src/report/date-ticks.ts';
import { drawPlot, type Plot } from '../../src/report/plot.ts';

const noTicks = () => [];
const straight: Plot = {
  lines: [
    {
      as: 'line',
      points: [
        [0, 0],
        [10, 10],
      ],
    },
  ],
  bands: [],
  xTicks: noTicks,
};

/** Three weeks of body weight with six days missing, and the band it should stay in. */
const weights: Plot = {
  lines: [
    {
      as: 'dots',
      gap: 3,
      points: [90, 89.6, 90.3, 89.5, 89.9, 89.2, 89.4, 88.9, 89.3].map((y, at) => [20_600 + at, y]),
    },
    {
      as: 'line',
      gap: 3,
      points: [
        [20_600, 90],
        [20_608, 89.2],
        [20_615, 88.6],
        [20_618, 88.4],
      ],
    },
  ],
  bands: [
    {
      edges: [
        [20_600, 90, 90],
        [20_618, 87.7, 88.8],
      ],
    },
  ],
  xTicks: dateTicks,
};

describe('a plot in the terminal', () => {
  it('draws a rising line from the lower left to the upper right', () => {
    const lines = drawPlot(straight, { width: 24, height: 8, glyphs: 'ascii' });
    expect(lines).toEqual([
      '10+                   **',
      '  |               ****',
      '  |           ****',
      ' 5+       ****',
      '  |   ****',
      ' 0+***',
      '  +---------------------',
      '',
    ]);
  });

  it('shows data, trend, gap, band and dates in one frame', () => {
    const lines = drawPlot(weights, { width: 44, height: 12, glyphs: 'ascii' });
    expect(lines).toMatchInlineSnapshot(`
      [
        "  |    o",
        "90+*:::     o",
        "  |  o ::::::",
        "  |      o   :::o::::o:",
        "  |           o   :::*::::::::::",
        "89+               o    :::::::::::::::::::",
        "  |                         :::::::::***::::",
        "  |                              :::::::****",
        "88+                                   ::::::",
        "  |                                        :",
        "  +-----------+---------------+-------------",
        "            1 Jun           8 Jun",
      ]
    `);
    expect(drawPlot(weights, { width: 44, height: 12, glyphs: 'braille' })).toMatchInlineSnapshot(`
      [
        "  │    ⠐",
        "90┤⠂░░░     ⡀",
        "  │  ⡀ ░░░░░░",
        "  │      ⠈   ░░░⠠░░░░⡀░",
        "  │           ⠂   ░░░⠂░░░░░░░░░░",
        "89┤               ⠐    ░░░░░░░░░░░░░░░░░░░",
        "  │                         ░░░░░░░░░⠒⠢⠤⢄⣀⡀░",
        "  │                              ░░░░░░░░░⠈⠉",
        "88┤                                   ░░░░░░",
        "  │                                        ░",
        "  └───────────┬───────────────┬─────────────",
        "            1 Jun           8 Jun",
      ]
    `);
  });

  it('leaves a gap open where readings are missing', () => {
    const row = (gap: number) =>
      drawPlot(
        {
          ...straight,
          lines: [
            {
              as: 'line',
              gap,
              points: [
                [0, 5],
                [4, 5],
                [16, 5],
                [20, 5],
              ],
            },
          ],
        },
        { width: 30, height: 6, glyphs: 'ascii' },
      ).find((line) => line.includes('*'));
    expect(row(5)).toMatch(/\*+ {5,}\*+/);
    expect(row(50)).not.toMatch(/\* +\*/);
  });

  it('says nothing where nothing can be read', () => {
    expect(drawPlot(straight, { width: 10, height: 8, glyphs: 'braille' })).toEqual([]);
    expect(drawPlot(straight, { width: 60, height: 4, glyphs: 'braille' })).toEqual([]);
    expect(drawPlot({ ...straight, lines: [] }, { width: 60, height: 9, glyphs: 'ascii' })).toEqual(
      [],
    );
  });

  it('says each label in whole, with a blank between two and a tick for each', () => {
    const span = fc.integer({ min: 3, max: 300 });
    const width = fc.integer({ min: 16, max: 120 });
    fc.assert(
      fc.property(span, width, (to, columns) => {
        const points = [0, to].map((x) => [x, x] as const);
        const every = Array.from({ length: to + 1 }, (_, at) => ({ at, label: `d${at}` }));
        const plot: Plot = { lines: [{ as: 'dots', points }], bands: [], xTicks: () => every };
        const lines = drawPlot(plot, { width: columns, height: 6, glyphs: 'braille' });
        const said = (lines.at(-1) ?? '').trim().split(/ +/);
        expect(every.map(({ label }) => label)).toEqual(expect.arrayContaining(said));
        expect([...(lines.at(-2) ?? '')].filter((sign) => sign === '┬')).toHaveLength(said.length);
      }),
    );
  });

  it('keeps to the asked size, and to plain ASCII where that is asked, whatever the data', () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 40_000 }), value), {
      maxLength: 40,
    });
    const size = fc.record({
      width: fc.integer({ min: 1, max: 140 }),
      height: fc.integer({ min: 1, max: 40 }),
      glyphs: fc.constantFrom('braille' as const, 'ascii' as const),
    });
    fc.assert(
      fc.property(points, points, size, (dots, line, { width, height, glyphs }) => {
        const ordered = [...line].sort((a, b) => a[0] - b[0]);
        const plot: Plot = {
          lines: [
            { as: 'dots', points: dots },
            { as: 'line', points: ordered, gap: 30 },
          ],
          bands: [{ edges: ordered.map(([x, y]) => [x, y - 1, y + 1]) }],
          xTicks: dateTicks,
        };
        const drawn = drawPlot(plot, { width, height, glyphs });
        expect([0, height]).toContain(drawn.length);
        for (const text of drawn) {
          expect(stringWidth(text)).toBeLessThanOrEqual(width);
          if (glyphs === 'ascii') expect(text).toMatch(/^[ -~]*$/);
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('dates on an axis', () => {
  it('never gives more than asked, all inside, in order, each once', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10_000, max: 30_000 }),
        fc.integer({ min: 1, max: 8_000 }),
        fc.integer({ min: 2, max: 14 }),
        (from, days, most) => {
          const ticks = dateTicks(from, from + days, most);
          expect(ticks.length).toBeLessThanOrEqual(most);
          expect(ticks.every(({ at }) => at >= from && at <= from + days)).toBe(true);
          expect(ticks.map(({ at }) => at)).toEqual(
            [...new Set(ticks.map(({ at }) => at))].sort((a, b) => a - b),
          );
        },
      ),
      { numRuns: 150 },
    );
  });

  it('begins weeks on Monday', () => {
    // 25 November 2026 is a Wednesday (ISO 8601 calendar); day 20 782 by counting from 1970.
    const from = Date.UTC(2026, 10, 25) / 86_400_000;
    expect(dateTicks(from, from + 28, 4).map(({ label }) => label)).toEqual([
      '30 Nov',
      '7 Dec',
      '14 Dec',
      '21 Dec',
    ]);
  });

  it('names the year where one begins', () => {
    const from = Date.UTC(2026, 9, 20) / 86_400_000;
    expect(dateTicks(from, from + 120, 6).map(({ label }) => label)).toEqual([
      'Nov',
      'Dec',
      '2027',
      'Feb',
    ]);
  });
});

describe('bars of hard sets', () => {
  const bars = [
    { label: 'chest', value: 8, text: '8' },
    { label: 'side-delts', value: 4, text: '4' },
    { label: 'quads', value: 12, text: '12' },
  ];

  it('draws each bar to scale, with the wanted range and its end', () => {
    expect(barRows(bars, [6, 10], 38, 'ascii')).toEqual([
      'chest      ################:::|      8',
      'side-delts ########    :::::::|      4',
      'quads      ###################|#### 12',
    ]);
  });

  it('keeps to the width, and keeps the numbers where there is no room for bars', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (width) => {
        const rows = barRows(bars, [6, 10], width, 'braille');
        expect(rows.every((row) => stringWidth(row) <= width)).toBe(true);
      }),
    );
    expect(barRows(bars, [6, 10], 20, 'braille')).toEqual([
      'chest      8',
      'side-delts 4',
      'quads      12',
    ]);
  });
});
