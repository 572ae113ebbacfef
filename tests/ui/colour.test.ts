import { expect, it, vi } from 'vitest';
import { Glass } from './glass.ts';

vi.hoisted(() => {
  process.env.FORCE_COLOR = '1';
});

const styles = (raw: string) => new Set(raw.match(/\u001b\[[\d;]*m/g));

async function played(theme: 'colour' | 'plain'): Promise<Set<string>> {
  const glass = new Glass({ settings: { theme } });
  await glass.until('space begin');
  glass.type(' s ');
  await glass.until(/LIFT/);
  glass.type(' 99\r');
  await glass.until('A set cannot have 99 reps');
  glass.type('q');
  await glass.end;
  return styles(glass.raw);
}

/** SGR parameters of ECMA-48: 1 bold, 2 faint, 7 reversed, 22 and 27 their ends, 39 default colour. */
const SHAPES = ['1', '2', '7', '22', '27', '0'].map((code) => `\u001b[${code}m`);

it('the theme has two colours beside the terminal’s own', async () => {
  const colours = [...(await played('colour'))].filter((code) => !SHAPES.includes(code));
  expect(colours.sort()).toEqual(['\u001b[33m', '\u001b[36m', '\u001b[39m']);
});

it('the plain theme has none', async () => {
  const colours = [...(await played('plain'))].filter((code) => !SHAPES.includes(code));
  expect(colours).toEqual([]);
});
