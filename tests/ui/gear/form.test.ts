import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gearSchema } from '../../../src/settings/gear-schema.ts';
import type { Key, NamedKey } from '../../../src/terminal/key-decoder.ts';
import { defaultGear } from '../../../src/training/default-gear.ts';
import type { Gear } from '../../../src/training/gear.ts';
import { FORM_KEYS } from '../../../src/ui/gear/form-keys.ts';
import { formLines, spokenFormLines } from '../../../src/ui/gear/form-lines.ts';
import { rowsOf } from '../../../src/ui/gear/form-rows.ts';
import { type FormState, formOf } from '../../../src/ui/gear/form-state.ts';
import { type FormEffect, pressForm } from '../../../src/ui/gear/press-form.ts';
import { textOf, widthOf } from '../../../src/ui/line.ts';

const SIZES = [
  { columns: 34, rows: 16 },
  { columns: 80, rows: 24 },
  { columns: 120, rows: 40 },
];

/** A form under the fingers: `<name>` is a named key, anything else a letter. */
class Fingers {
  state: FormState;
  readonly effects: FormEffect[] = [];

  constructor(gear: Gear = defaultGear('kg')) {
    this.state = formOf(gear);
  }

  keys(typed: string): this {
    for (const [key, name] of typed.matchAll(/<([a-z-]+)>|./g)) {
      const pressed: Key =
        key === ' '
          ? { kind: 'named', name: 'space' }
          : name
            ? { kind: 'named', name: name as NamedKey }
            : { kind: 'text', text: key };
      const { state, effect } = pressForm(this.state, pressed);
      this.state = state;
      if (effect) this.effects.push(effect);
    }
    return this;
  }

  /** Goes to the thing of that name. */
  at(label: string): this {
    const row = rowsOf(this.state.gear).findIndex((each) => each.label === label);
    expect(row).toBeGreaterThanOrEqual(0);
    this.keys('<up>'.repeat(100) + '<down>'.repeat(row));
    return this;
  }

  get gear(): Gear {
    return this.state.gear;
  }

  screen(size = SIZES[1]): string {
    return formLines(this.state, size as (typeof SIZES)[0])
      .map(textOf)
      .join('\n');
  }
}

const kg = (amount: number) => ({ amount, unit: 'kg' as const });
const plate = (fingers: Fingers, amount: number) =>
  fingers.gear.plates.find(({ stamped }) => stamped.amount === amount);

test('plates come and go in pairs by the arrows, and as typed by digits', () => {
  const fingers = new Fingers().at('plate 20 kg').keys('<right><right><left>');
  expect(plate(fingers, 20)?.count).toBe(8);
  fingers.keys('13<enter>');
  expect(plate(fingers, 20)?.count).toBe(13);
});

test('no more can be owned than can be typed, and no mass falls to nothing', () => {
  const fingers = new Fingers().at('plate 20 kg').keys('199<right><right>');
  expect(plate(fingers, 20)?.count).toBe(200);
  expect(fingers.keys('1<left><left>').gear.plates[0]?.count).toBe(0);
  expect(fingers.at('light band').keys('1<left><left><left>').gear.bands[0]?.assistance).toEqual(
    kg(0.5),
  );
});

test('a number is taken by the next key that goes elsewhere, and by saving', () => {
  const fingers = new Fingers().at('plate 10 kg').keys('2<down>');
  expect(plate(fingers, 10)?.count).toBe(2);
  fingers.at('plate 5 kg').keys('<tab>4,9<enter><enter>');
  expect(fingers.effects).toEqual([{ do: 'save', gear: fingers.gear }]);
  expect(plate(fingers, 5)?.measured).toEqual(kg(4.9));
});

test('esc takes a half typed number away first', () => {
  const fingers = new Fingers().at('plate 20 kg').keys('4<esc>');
  expect([plate(fingers, 20)?.count, fingers.effects]).toEqual([6, []]);
});

test('what cannot be read stays to be corrected, and says why', () => {
  const fingers = new Fingers().at('plate 20 kg').keys('1.5<enter>');
  expect(fingers.state.message).toContain('whole number');
  expect(fingers.screen()).toContain('[1.5_]');
  expect(fingers.keys('<backspace><backspace><enter>').gear.plates[0]?.count).toBe(1);
});

test('yes and no turn round; nothing is typed there', () => {
  const fingers = new Fingers().at('safeties').keys(' ');
  expect(fingers.gear.safeties).toBe(true);
  expect(fingers.keys('5').state.message).toContain('Nothing is typed here');
});

test('things are added as the options write them, and the cursor goes there', () => {
  const fingers = new Fingers().at('no stacks').keys('apulldown=5kg..80kg by 5kg<enter>');
  expect(fingers.gear.stacks).toEqual([
    { name: 'pulldown', lowest: kg(5), step: kg(5), highest: kg(80) },
  ]);
  expect(fingers.screen()).toMatch(/▸ pulldown +from \[5 kg\]/);
  fingers.keys('anonsense<enter>');
  expect(fingers.state.message).toContain('"nonsense"');
  expect(fingers.state.adding?.text).toBe('nonsense');
  fingers.keys('<esc>');
  expect([fingers.state.adding, fingers.gear.stacks.length]).toEqual([null, 1]);
});

test('what is typed in one piece is 200 letters at most, a number eight', () => {
  const typed = 'x'.repeat(201);
  expect(new Fingers().at('no stacks').keys(`a${typed}`).state.adding?.text).toHaveLength(200);
  expect(new Fingers().at('plate 20 kg').keys('123456789').screen()).toContain('[12345678_]');
});

test('a thing is removed, and everything is undone step by step', () => {
  const before = defaultGear('kg');
  const fingers = new Fingers(before).at('bar').keys('d').at('plate 20 kg').keys('<right>');
  expect(fingers.gear.bars).toEqual([]);
  expect(fingers.keys('uu').gear).toEqual(before);
  expect(fingers.keys('u').state.message).toContain('Nothing is left to undo');
});

test('leaving asks once where something is not saved, and not otherwise', () => {
  expect(new Fingers().keys('<esc>').effects).toEqual([{ do: 'leave', status: 0 }]);
  const fingers = new Fingers().at('belt').keys(' <esc>');
  expect(fingers.effects).toEqual([]);
  expect(fingers.state.message).toContain('Not saved yet');
  // Any other key takes the question back.
  expect(fingers.keys('<down><esc>').effects).toEqual([]);
  expect(fingers.keys('<esc>').effects).toEqual([{ do: 'leave', status: 0 }]);
  expect(new Fingers().keys('a<ctrl-c>').effects).toEqual([{ do: 'leave', status: 130 }]);
});

test('what none is owned of is not saved', () => {
  const fingers = new Fingers().at('plate 20 kg').keys('0<enter><enter>');
  const [effect] = fingers.effects;
  expect(effect?.do === 'save' && effect.gear.plates.map(({ stamped }) => stamped.amount)).toEqual([
    10, 5, 2.5, 1.25,
  ]);
});

const anyKeys = fc.array(
  fc.oneof(
    fc.constantFrom(...FORM_KEYS.flatMap(({ keys }) => keys).filter((key) => key !== 'ctrl-c')),
    fc.constantFrom('z', '=', 'kg'),
  ),
  { maxLength: 40 },
);

test('whatever is pressed, the gear fits its schema and the screen fits the terminal', () => {
  fc.assert(
    fc.property(anyKeys, fc.constantFrom(...SIZES), (names, size) => {
      const fingers = new Fingers();
      for (const name of names) fingers.keys(name.length > 1 ? `<${name}>` : name);
      expect(gearSchema().safeParse(fingers.gear).success).toBe(true);
      const lines = formLines(fingers.state, size);
      expect(lines).toHaveLength(size.rows);
      for (const one of lines) expect(widthOf(one)).toBeLessThanOrEqual(size.columns);
    }),
    { numRuns: 150 },
  );
});

describe.each(SIZES)('at $columns × $rows', (size) => {
  test('every thing can be seen when the cursor is there', () => {
    for (const { label } of rowsOf(defaultGear('kg'))) {
      expect(new Fingers().at(label).screen(size)).toContain(`▸ ${label}`);
    }
  });
});

test('the chosen value stands in brackets, so that no colour is needed', () => {
  const screen = new Fingers().at('plate 20 kg').screen();
  expect(screen).toMatch(/▸ plate 20 kg +owned \[6\] +weighs {2}as stamped/);
  expect(screen.match(/\[/g)).toHaveLength(1);
});

test.each(SIZES)('the keys of here are in the help at $columns × $rows, each of them', (size) => {
  const screen = new Fingers().keys('?').screen(size);
  for (const { label } of FORM_KEYS) expect(screen).toContain(label);
  expect(screen).toMatch(/← - → \+ space +change/);
});

test('a screen reader hears the thing at the cursor, not the whole list', () => {
  const lines = spokenFormLines(new Fingers().at('plate 20 kg').keys('<right>').state);
  expect(lines[0]).toBe('Your gear, not saved. plate 20 kg: owned 8, weighs as stamped.');
  expect(lines.join(' ')).not.toContain('plate 10 kg');
});
