import { expect, it } from 'vitest';
import { Glass } from './glass.ts';

it('runs from the preview to the first rest and leaves the terminal as it was', async () => {
  const glass = new Glass();
  await glass.until('space begin');
  expect(glass.modes()).toMatchObject({ buffer: 'alternate', paste: true, cursorHidden: true });
  glass.type(' ');
  await glass.until('WARM UP');
  glass.type('s ');
  await glass.until(/LIFT.*set 1 of 3/);
  glass.type(' ');
  const rest = await glass.until('saved as planned: 7 reps');
  expect(rest).toContain('REST');
  glass.type('q');
  expect(await glass.end).toBe(0);
  await glass.screen();
  expect(glass.modes()).toEqual({
    buffer: 'normal',
    mouse: 'none',
    paste: false,
    cursorHidden: false,
    raw: false,
  });
});
