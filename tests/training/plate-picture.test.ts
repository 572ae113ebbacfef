import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms, micrograms, pounds } from '../../src/training/mass.ts';
import { drawnDiameter, platePicture } from '../../src/training/plate-picture.ts';
import { loadBar } from '../../src/training/plates.ts';
import { anyPlates, bothSides, everySide, kg, lb, plates, someGear } from './some-gear.ts';

const draw = (total: number, width: number): string =>
  `\n${platePicture(loadBar(defaultGear('kg'), null, kilograms(total))!, width).join('\n')}\n`;

describe('one end of the bar', () => {
  test('shows plates from the inside out, as high as they are wide', () => {
    expect(draw(137.5, 34)).toBe(`
   ┌──┬──┐
   │  │  ├──┬─┐
   │  │  │  │ ├───┬────┐
═══│20│20│10│5│2.5│1.25│══
   │  │  │  │ ├───┴────┘
   │  │  ├──┴─┘
   └──┴──┘
`);
  });

  test('has more rows where there is room', () => {
    expect(draw(72.5, 80)).toBe(`
   ┌──┐
   │  │
   │  ├─┐
   │  │ ├────┐
═══│20│5│1.25│══
   │  │ ├────┘
   │  ├─┘
   │  │
   └──┘
`);
  });

  test('of an empty bar is the bar', () => {
    expect(draw(20, 34)).toBe('\n═════\n');
  });

  test('names the unit where both are on', () => {
    const mixed = someGear({ plates: [...plates(2, kg(20)), ...plates(2, lb(10))] });
    const total = micrograms(20_000_000_000 + 40_000_000_000 + 9_071_847_400);
    expect(platePicture(loadBar(mixed, null, total)!, 34)[3]).toBe('═══│20kg│10lb│══');
  });

  test('draws equal plates as one where they do not fit', () => {
    const heap = someGear({ plates: plates(20, kg(25)) });
    const picture = platePicture(loadBar(heap, null, kilograms(520))!, 34);
    expect(picture[3]).toBe('═══│10×25│══');
  });

  test('fits to the column, apart, as one, or not at all, and is higher from 60 columns on', () => {
    const two = loadBar(someGear({ plates: plates(4, kg(25)) }), null, kilograms(120))!;
    const axis = (width: number) => platePicture(two, width).find((line) => line.startsWith('═'));
    expect(axis(12)).toBe('═══│25│25│══');
    expect(axis(11)).toBe('═══│2×25│══');
    expect(axis(10)).toBeUndefined();
    expect([59, 60].map((width) => platePicture(two, width).length)).toEqual([7, 9]);
  });

  test('draws nothing where even that is too wide', () => {
    const heap = someGear({ plates: plates(2, ...[25, 20, 15, 10, 5, 2.5, 1.25, 0.5].map(kg)) });
    expect(platePicture(loadBar(heap, null, heapTotal)!, 20)).toEqual([]);
  });
});

const heapTotal = kilograms(20 + 2 * (25 + 20 + 15 + 10 + 5 + 2.5 + 1.25 + 0.5));

test('plates of 20 kg and 45 lb are as large as a competition disc, smaller ones smaller', () => {
  expect([kilograms(20), pounds(45), kilograms(25)].map(drawnDiameter)).toEqual([450, 450, 450]);
  const rising = [0.5, 1.25, 2.5, 5, 10, 15, 20].map((amount) => drawnDiameter(kilograms(amount)));
  expect(rising).toEqual([...rising].sort((a, b) => a - b));
  expect(new Set(rising).size).toBe(rising.length);
});

test('any load fits the width, is mirrored at the bar, and has only glyphs one column wide', () => {
  fc.assert(
    fc.property(anyPlates, fc.nat(), fc.integer({ min: 34, max: 120 }), (owned, pick, width) => {
      const sides = everySide(owned, 1);
      const total = micrograms(20_000_000_000 + bothSides(sides[pick % sides.length]!));
      const loaded = loadBar(someGear({ plates: owned }), null, total)!;
      const lines = platePicture(loaded, width);
      for (const line of lines) {
        expect(stringWidth(line)).toBe(line.length);
        expect(line.length).toBeLessThanOrEqual(width);
      }
      const turned = lines.map((line) =>
        line.replace(/[┌┐┬└┘┴]/g, (glyph) => '└┘┴┌┐┬'['┌┐┬└┘┴'.indexOf(glyph)] ?? glyph),
      );
      expect(turned.reverse()).toEqual(lines);
      const axis = lines[(lines.length - 1) / 2] ?? '';
      if (loaded.side.length <= 4) {
        for (const { stamped } of loaded.side) expect(axis).toContain(String(stamped.amount));
      }
    }),
    { numRuns: 200 },
  );
});
