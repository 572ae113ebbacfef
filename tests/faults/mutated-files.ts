import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AHome } from '../commands/a-home.ts';
import { doSession, withTinyProgram } from '../commands/a-session.ts';
import type { Numbers } from './seeded-numbers.ts';

/** What a command said of a file that was changed. */
export interface Told {
  readonly status: number;
  readonly ms: number;
  readonly hasRawCode: boolean;
  readonly said: string;
}

interface Kind {
  readonly texts: (home: AHome) => Promise<readonly string[]>;
  readonly command: (file: string) => readonly string[];
}

const exported = async (home: AHome, ...args: string[]) => (await home.run('export', ...args)).out;

export const BAD_IMPORTS: Kind = {
  texts: async (home) => {
    doSession(home);
    return [
      await exported(home, '--as', 'json'),
      await exported(home, '--as', 'csv'),
      'date,body_mass,unit\r\n2026-11-20,80,kg\r\n2026-11-21,80.4,kg\r\n',
    ];
  },
  command: (file) => ['import', file],
};

const shipped = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../programs/${name}.yaml`, import.meta.url)), 'utf8');

export const BAD_PROGRAMS: Kind = {
  texts: async () => ['three-day', 'four-day', 'three-day-lb'].map(shipped),
  command: (file) => ['--program', file, 'today'],
};

/** Pieces that mean something to a reader of YAML, JSON, tables or numbers, and to a terminal. */
const PIECES = [
  ...['', '0', '-1', '1e999', '9e15', '820', '2026-02-30', '2125-01-01', 'null', 'true', '.nan'],
  ...['{', '}', '[', ']', '"', "'", ',', ':', '-', '#', '&a', '*a', '<<:', '|', '>', '\t', '\r\n'],
  ...['\u001b]52;c;aGk=\u0007', '\u009b31m', '\u202e', '\u0000', '\ufeff', '__proto__', '深蹲'],
  ...['- - - - - - - -', 'x'.repeat(5000), '&a [*a,*a]'],
];

function mutated(text: string, numbers: Numbers): string {
  let changed = text;
  for (let times = 1 + numbers(4); times > 0; times -= 1) {
    const at = numbers(changed.length + 1);
    const piece = PIECES[numbers(PIECES.length)] ?? '';
    const lines = changed.split('\n');
    const line = numbers(lines.length);
    changed =
      [
        () => changed.slice(0, at) + piece + changed.slice(at),
        () => changed.slice(0, at) + changed.slice(at + numbers(12)),
        () => lines.toSpliced(line, 1).join('\n'),
        () => lines.toSpliced(numbers(lines.length), 0, lines[line] ?? '').join('\n'),
        () =>
          lines
            .map((one, i) => (i === line ? one.replace(/([:,]) ?[^,:]*/, `$1 ${piece}`) : one))
            .join('\n'),
        () => changed.slice(0, at),
      ][numbers(6)]?.() ?? changed;
  }
  return changed;
}

// Tabs and line breaks are no codes.
const RAW = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e]/;

const sources = new Map<Kind, Promise<readonly string[]>>();
const folder = mkdtempSync(join(tmpdir(), 'holdfast-mutated-'));

async function sourcesOf(kind: Kind): Promise<readonly string[]> {
  const home = new AHome();
  try {
    withTinyProgram(home);
    return await kind.texts(home);
  } finally {
    home.throwAway();
  }
}

/** Changes one of the kind's files and gives it to its command, in a home of its own. */
export async function toldOf(kind: Kind, numbers: Numbers): Promise<Told> {
  if (!sources.has(kind)) sources.set(kind, sourcesOf(kind));
  const texts = (await sources.get(kind)) ?? [];
  const text = mutated(texts[numbers(texts.length)] ?? '', numbers);
  const file = join(folder, 'file');
  writeFileSync(file, text);
  const home = new AHome();
  try {
    const before = performance.now();
    const { status, out, err } = await home.run(...kind.command(file));
    const ms = performance.now() - before;
    return { status, ms, hasRawCode: RAW.test(out + err), said: err.slice(0, 200) };
  } catch (error) {
    return {
      status: 70,
      ms: 0,
      hasRawCode: false,
      said: `${(error as Error).stack} of ${text.slice(0, 2000)}`,
    };
  } finally {
    home.throwAway();
  }
}
