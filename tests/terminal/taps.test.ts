import { expect, test } from 'vitest';
import { aHome, type DrivenSession, drivenSession } from './a-session.ts';
import { SIZES, type Size } from './home.ts';

type Label = 'BEGIN' | 'LIFT' | 'DOWN' | '+' | '−' | 'UNDO' | 'LEAVE';

/** Presses and lets go with a finger on the middle of the target of that name, in SGR mouse reports. */
function tapOn(screen: string, label: Label): string {
  const lines = screen.split('\n');
  const row = lines.findIndex((line) => line.includes('│') && targetNames(line).includes(label));
  const column = (lines[row]?.lastIndexOf(label) ?? -1) + 1;
  if (row < 0 || column < 1) throw new Error(`No target ${label} on this screen:\n${screen}`);
  return `\u001b[<0;${column};${row + 1}M\u001b[<0;${column};${row + 1}m`;
}

const targetNames = (line: string) => line.split('│').map((part) => part.trim());

async function withTaps(size: Size = SIZES.usual): Promise<DrivenSession & { tap: Tap }> {
  const home = aHome();
  home.settings({ cautions: 'read', taps: true });
  const session = await drivenSession({ home, size });
  await session.terminal.until('BEGIN');
  const tap: Tap = async (label, wanted) => {
    await session.pass(2);
    const screen = await session.terminal.until(new RegExp(`│ *${label.replace('+', '\\+')} *│`));
    return session.terminal.press(tapOn(screen, label), wanted);
  };
  return { ...session, tap };
}

type Tap = (label: Label, wanted: string) => Promise<string>;

test.each(Object.entries(SIZES))(
  'a set is done by taps alone on a screen that is %s',
  async (_, size) => {
    const { tap, home } = await withTaps(size);
    await tap('BEGIN', ' LIFT ');
    await tap('LIFT', ' WAIT ');
    await tap('DOWN', '‹6›');
    await tap('+', '‹7›');
    await tap('+', '‹8›');
    await tap('−', '‹7›');
    await tap('LIFT', ' WAIT ');
    expect(home.of('set-amended')).toMatchObject([{ count: 7 }]);
    await tap('UNDO', 'Taken back');
    expect(home.of('undone')).toHaveLength(1);
  },
);

test('letting go and the wheel do nothing', async () => {
  const { terminal, tap, home } = await withTaps();
  await tap('BEGIN', ' LIFT ');
  const press = tapOn(terminal.screen(), 'LIFT').split('M')[0] ?? '';
  const place = press.slice(press.indexOf(';'));
  for (const report of [`\u001b[<0${place}m`, `\u001b[<64${place}M`]) {
    terminal.send(report);
  }
  await terminal.press('w', 'First time');
  expect(home.of('set-started')).toHaveLength(0);
});

test('taps are asked for only where they are switched on, and can be switched off', async () => {
  const plain = await drivenSession();
  await plain.terminal.until('space begin');
  expect(plain.terminal.modes().mouse).toBe('none');

  const { terminal } = await withTaps();
  expect(terminal.modes().mouse).toBe('vt200');
  // 1003 alone would make a common Android terminal drop taps.
  expect(terminal.raw).not.toContain('\u001b[?1003h');
  await terminal.press('g', '[x] Taps on the screen');
  for (const row of ['Flash', 'Spoken', 'Desktop', 'Taps']) {
    await terminal.press('\u001b[B', new RegExp(`▸ \\[.\\] ${row}`));
  }
  await terminal.press(' ', '[ ] Taps on the screen');
  expect(terminal.modes().mouse).toBe('none');
});
