import { PassThrough } from 'node:stream';
import { expect, test } from 'vitest';
import { plainStdout } from '../../src/terminal/plain-stdout.ts';

/** What reaches the terminal of what is written there in such a locale. */
function written(
  env: Readonly<Record<string, string>>,
  ...chunks: readonly (string | Uint8Array)[]
) {
  const terminal = Object.assign(new PassThrough(), { columns: 80 });
  const stdout = plainStdout(terminal as unknown as NodeJS.WriteStream, env);
  for (const chunk of chunks) stdout.write(chunk);
  return { text: String(terminal.read()), columns: stdout.columns, stdout, terminal };
}

test('where the locale has nothing but ASCII, every sign is one of it', () => {
  const { text, columns, stdout, terminal } = written(
    { LANG: 'C' },
    '│ 3 × 5–8 │',
    Buffer.from('─'),
  );
  // Bytes are written as they are.
  expect(text).toBe('| 3 x 5-8 |─');
  expect(columns).toBe(80);
  let heard = 0;
  stdout.on('resize', () => {
    heard += 1;
  });
  terminal.emit('resize');
  expect(heard).toBe(1);
});

test('any other is left as it is', () => {
  expect(written({ LANG: 'de_DE.UTF-8' }, '│ 3 × 5–8 │').text).toBe('│ 3 × 5–8 │');
});
