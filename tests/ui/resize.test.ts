import { it } from 'vitest';
import { frameOf } from '../../src/ui/frame.ts';
import { textOf } from '../../src/ui/line.ts';
import { Glass } from './glass.ts';
import { Player } from './player.ts';

it('what Ink draws is the frame, row by row, and follows the window as it is resized', async () => {
  const glass = new Glass();
  await glass.until('space begin');
  glass.type(' s ');
  await glass.until(/LIFT/);
  glass.type(' ');
  await glass.until('saved as planned');
  for (const [columns, rows] of [
    [34, 16],
    [120, 40],
    [80, 24],
    [50, 14],
    [30, 10],
    [80, 24],
  ] as const) {
    glass.resize(columns, rows);
    const player = new Player({ columns, rows }).atFirstSet().keys('  ');
    const wanted = frameOf(player.store.model(), player.scene.coach)
      .lines.map((line) => textOf(line).trimEnd())
      .join('\n')
      .trimEnd();
    await glass.until(new RegExp(`^${wanted.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\s*$`));
  }
  glass.type('q');
  await glass.end;
});
