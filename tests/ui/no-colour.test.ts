import { expect, it, vi } from 'vitest';
import { Glass } from './glass.ts';

// As the environment resolver sets it for NO_COLOR, before Ink is imported.
vi.hoisted(() => {
  process.env.FORCE_COLOR = '0';
});

it('without colour not one style is written, and the state still reads', async () => {
  const glass = new Glass();
  await glass.until('space begin');
  glass.type(' s ');
  await glass.until(/▐ LIFT .*set 1 of 3 ▌/);
  glass.type(' ');
  await glass.until(/▐ REST ▌/);
  glass.type('q');
  await glass.end;
  const beforeLeaving = glass.raw.slice(0, glass.raw.lastIndexOf('\u001b[?1049l'));
  expect(beforeLeaving.match(/\u001b\[[\d;]*m/g)).toBeNull();
});
