import { describe, expect, it } from 'vitest';
import type { PageView } from '../../src/report/page-view.ts';
import { pageHtml } from '../../src/report/svg/page.tsx';
import { PALETTES } from '../../src/report/svg/page-style.ts';
import { madePage } from './made-page.ts';

const html = pageHtml(madePage());

/** Contrast of two colours, WCAG 2.2: (L1 + 0.05) / (L2 + 0.05) of their relative luminances. */
function contrast(a: string, b: string): number {
  const luminance = (colour: string) => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5]
      .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

describe('the exported page', () => {
  it('needs nothing from outside and forbids it to itself', () => {
    expect(html).toMatch(/^<!doctype html>/);
    expect(html).toContain(`content="default-src 'none'; `);
    expect(html).not.toMatch(/<script|<link|<img|<iframe|\b(?:src|href)=|url\(|https?:|@import/i);
  });

  it('is the same as before, so that no change of a picture goes unseen', async () => {
    await expect(`${html.replaceAll('><', '>\n<')}\n`).toMatchFileSnapshot('page.txt');
  });

  it('draws every picture, says what it shows, and gives its numbers as a table', () => {
    const pictures = html.match(/<svg role="img" aria-label="[^"]+"/g) ?? [];
    // Body weight, kept against lost, two lifts, two muscles.
    expect(pictures).toHaveLength(6);
    expect(html.match(/<table><caption>/g)).toHaveLength(5);
    expect(html.match(/<th scope="col">/g)?.length).toBeGreaterThan(8);
    expect(html).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('writes the last value beside the last point of a line', () => {
    const last = [...html.matchAll(/<circle class="last" cx="([\d.]+)" cy="([\d.]+)"/g)];
    const label = [
      ...html.matchAll(/<text class="value" x="([\d.]+)" y="([\d.]+)">([\d.]+)[^<]*</g),
    ];
    const view = madePage();
    const end = (line: readonly (readonly [number, number])[] | undefined, digits: number) =>
      line?.at(-1)?.[1].toFixed(digits);
    const ends = [
      end(view.body?.trend, 1),
      // Whole percents: more would promise what strength kept is not known to.
      end(view.kept?.points, 0),
      ...view.lifts.map(({ points }) => end(points, 1)),
    ];
    expect(label.map(([, , , text]) => text)).toEqual(ends);
    for (const [at, [, x, y]] of last.entries()) {
      expect(Number(label[at]?.[1]) - Number(x)).toBeCloseTo(8, 0);
      expect(Number(label[at]?.[2]) - Number(y)).toBeCloseTo(4.5, 0);
    }
    // Every line ends under its mark.
    const lines = [...html.matchAll(/<path class="line" d="[^"]*?([\d.]+),([\d.]+)"/g)];
    expect(lines.map(([, x, y]) => [x, y])).toEqual(last.map(([, x, y]) => [x, y]));
  });

  it('shows six percent to both sides of the first strength, so that noise looks like noise', () => {
    const view = madePage();
    const points = view.lifts[0]!.points.map(([x]) => [x, 100] as const);
    const page = pageHtml({
      ...view,
      lifts: [
        { ...view.lifts[0]!, name: 'Even', points, strength: { line: points, gap: 7, bands: [] } },
      ],
    });
    const figure = page.slice(
      page.indexOf('>Even<'),
      page.indexOf('</figure>', page.indexOf('>Even<')),
    );
    const labels = [...figure.matchAll(/>(\d+)<\/text>/g)].map(([, text]) => Number(text));
    expect(labels.filter((each) => each > 90)).toEqual([95, 100, 105]);
  });

  it('names the first and the last week under the bars, and a single week once', () => {
    const named = (weeks: readonly string[]) => {
      const view = madePage();
      if (!view.muscles) throw new Error('made with muscles');
      const page = pageHtml({
        ...view,
        muscles: {
          ...view.muscles,
          weeks,
          muscles: [{ name: 'Chest', sets: weeks.map(() => 8) }],
        },
      });
      return [...page.matchAll(/>(\d+ Jan)<\/text>/g)].map(([, word]) => word);
    };
    expect(named(['4 Jan', '11 Jan', '18 Jan'])).toEqual(['4 Jan', '18 Jan']);
    expect(named(['4 Jan'])).toEqual(['4 Jan']);
    expect(named([])).toEqual([]);
  });

  it('escapes whatever stands in names and notes', () => {
    const bad = '</style><script>alert("1")</script>&\'';
    const view: PageView = madePage();
    const page = pageHtml({
      ...view,
      program: bad,
      headline: bad,
      findings: [{ text: bad, source: bad }],
      lifts: view.lifts.map((lift) => ({ ...lift, name: `${bad}${lift.name}` })),
    });
    expect(page).not.toContain('<script');
    expect(page.match(/<\/style>/g)).toHaveLength(1);
  });

  it('has a word for every axis', () => {
    for (const words of [
      'body weight since the start, %',
      'strength kept, %',
      'e1RM, kg',
      'hard sets',
      'week from',
    ])
      expect(html).toContain(`>${words}</text>`);
  });

  it('leaves out every picture of body weight where none is to be shown, and says why', () => {
    const page = pageHtml({ ...madePage(), body: null, kept: null, noBody: 'As you asked.' });
    expect(page).toContain('As you asked.');
    expect(page).not.toContain('Body weight, kg');
    expect(page).not.toContain('weight lost');
  });

  it('stands with a single reading and with none', () => {
    const view = madePage();
    const [lift] = view.lifts;
    if (!lift || !view.body) throw new Error('made with lifts and body weight');
    const single = pageHtml({
      ...view,
      lifts: [{ ...lift, points: lift.points.slice(0, 1) }],
      body: { ...view.body, readings: [], trend: [], band: null },
    });
    expect(single).not.toMatch(/NaN|undefined|Infinity/);
  });

  it.each(Object.entries(PALETTES))(
    'is readable in %s: WCAG 2.2, 1.4.3 and 1.4.11',
    (_, colours) => {
      for (const text of [colours.ink, colours.quiet, colours.accent]) {
        expect(contrast(text, colours.ground)).toBeGreaterThanOrEqual(4.5);
        expect(contrast(text, colours.card)).toBeGreaterThanOrEqual(4.5);
      }
      for (const mark of [colours.line, colours.dot, colours.accent]) {
        expect(contrast(mark, colours.card)).toBeGreaterThanOrEqual(3);
      }
      expect(contrast(colours.line, colours.band)).toBeGreaterThanOrEqual(3);
    },
  );

  it('knows the contrast of black on white', () => {
    // WCAG 2.2: 21 is the greatest ratio there is.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  });
});
