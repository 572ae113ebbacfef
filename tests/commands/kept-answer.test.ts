import {
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { askedAgain, keptAnswer, keptAnswerPath } from '../../src/commands/kept-answer.ts';
import { age } from '../bench/long-history.ts';
import { AHome } from './a-home.ts';
import { doSession, withTinyProgram } from './a-session.ts';

const HOUR = 3_600_000;

let home: AHome;
beforeEach(() => {
  home = new AHome();
  home.build = 'one build';
  // Files carry the time of the machine, so the home's own is after it.
  home.wall = Date.now() + HOUR;
  withTinyProgram(home);
  for (let day = 0; day < 3; day += 1) {
    doSession(home);
    home.wall += 48 * HOUR;
  }
  age(home.folder);
});
afterEach(() => home.throwAway());

function kept(...argv: string[]): string | null {
  const asked = askedAgain(home.ports(), argv);
  return asked && keptAnswer(home.ports(), asked);
}

/** What is worked out now, nothing being kept. */
async function fresh(...argv: string[]): Promise<string> {
  const { build } = home;
  home.build = null;
  const { out } = await home.run(...argv);
  home.build = build;
  return out;
}

const withLine = (said: string | null) => said !== null && `${said}\n`;

describe('the answer to today', () => {
  it.each([['today'], ['today', '--json']])(
    'is kept, and said again while nothing is another: %s %s',
    async (...argv) => {
      expect(kept(...argv)).toBeNull();
      const { out } = await home.run(...argv);
      home.wall += HOUR;
      expect(withLine(kept(...argv))).toBe(out);
      expect(out).toBe(await fresh(...argv));
    },
  );

  it('is kept for the very command line alone', async () => {
    await home.run('today', '--json');
    for (const argv of [['today'], ['today', '--json', '--minutes', '20'], ['history'], []]) {
      expect(kept(...argv)).toBeNull();
    }
  });
});

const journalFiles = () =>
  readdirSync(join(home.data, 'journal'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jsonl'))
    .map((name) => join(home.data, 'journal', name));

const rewrite = (path: string, change: (text: string) => string): void =>
  writeFileSync(path, change(readFileSync(path, 'utf8')));

/** All that may become another between two questions. */
const CHANGES: Readonly<Record<string, () => unknown>> = {
  'a session is done': () => doSession(home),
  'a session is begun': () => doSession(home, { sets: 1, close: false }),
  'a weigh-in': () => home.run('weigh', '80', '--sure'),
  'other gear': () => home.run('gear', '--plates', '10kg=2', '20kg=2'),
  'the last session is deleted': async () => {
    const { results } = await home.json('history');
    const last = (results as readonly { readonly session: string }[]).at(-1);
    await home.run('amend', `${last?.session}`, '--delete');
  },
  'the program says more sets': () =>
    rewrite(join(home.folder, 'tiny.yaml'), (text) => text.replace(/sets: \d/, 'sets: 4')),
  'the program is gone': () => rmSync(join(home.folder, 'tiny.yaml'), { force: true }),
  'the program cannot be read': () => writeFileSync(join(home.folder, 'tiny.yaml'), 'days: ['),
  'another program is remembered': () =>
    home.writeSettings({
      program: join(home.ports().shippedPrograms, 'four-day.yaml'),
      cautions: 'read',
    }),
  'the settings are damaged': () => writeFileSync(join(home.config, 'settings.json'), '{'),
  'the next day': () => {
    home.wall += 24 * HOUR;
  },
  'a month later': () => {
    home.wall += 30 * 24 * HOUR;
  },
  'a journey of eleven hours west': () => {
    home.zone -= 660;
  },
  'a file of the journal is gone': () => rmSync(journalFiles()[0] ?? '', { force: true }),
  'a file of the journal has lost its last line': () => {
    const path = journalFiles().at(-1);
    if (path) rewrite(path, (text) => text.replace(/[^\n]*\n$/, ''));
  },
  'a file of the journal has other bytes': () => {
    const path = journalFiles()[0];
    if (path) rewrite(path, (text) => text.replace('40000000000', '41000000000'));
  },
  'a file takes the place of another, with its size and time': () => {
    const path = journalFiles()[0];
    if (!path) return;
    const { mtime } = statSync(path);
    cpSync(path, `${path}.new`);
    rewrite(`${path}.new`, (text) =>
      text.replaceAll(/"id":"[^:]+/g, (id) => id.replace(/.$/, 'z')),
    );
    utimesSync(`${path}.new`, mtime, mtime);
    renameSync(`${path}.new`, path);
  },
  'a folder of another year comes': () => {
    const from = journalFiles()[0];
    const folder = join(home.data, 'journal', '2019-03');
    mkdirSync(folder, { recursive: true });
    if (from) renameSync(from, join(folder, '2019-03-04-zzzzzz-abcdefghij.jsonl'));
  },
  'the whole journal is gone': () =>
    rmSync(join(home.data, 'journal'), { recursive: true, force: true }),
  'another version': () => {
    home.build = 'another build';
  },
  'what is kept is cut short': () => {
    const path = keptAnswerPath(home.ports(), 'answer');
    rewrite(path, (text) => text.slice(0, -7));
  },
  'what is kept holds zeroes': () => {
    const path = keptAnswerPath(home.ports(), 'answer');
    rewrite(path, (text) => `${text.slice(0, 90)}${'\0'.repeat(20)}${text.slice(110)}`);
  },
  'what is kept holds no words': () => {
    const path = keptAnswerPath(home.ports(), 'answer');
    rewrite(path, (text) => JSON.stringify({ ...JSON.parse(text), said: [7] }));
  },
  'an hour later': () => {
    home.wall += HOUR;
  },
};

describe('after a change, what is kept is what is worked out anew', () => {
  it.each(Object.keys(CHANGES))('%s', async (name) => {
    await home.run('today', '--json');
    expect(kept('today', '--json')).not.toBeNull();
    await CHANGES[name]?.();
    const again = kept('today', '--json');
    if (again !== null) expect(withLine(again)).toBe(await fresh('today', '--json'));
    // What is kept then holds, too.
    age(home.folder);
    const { out } = await home.run('today', '--json');
    const now = kept('today', '--json');
    if (now !== null) expect(withLine(now)).toBe(out);
    expect(out).toBe(await fresh('today', '--json'));
  });

  it('whatever changes one after the other', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.constantFrom(...Object.keys(CHANGES)), fc.boolean()), {
          minLength: 2,
          maxLength: 5,
        }),
        async (steps) => {
          for (const [name, isLongAgo] of steps) {
            await home.run('today', '--json');
            try {
              await CHANGES[name]?.();
            } catch {
              // What it would change is gone already.
            }
            if (isLongAgo) age(home.folder);
            const again = kept('today', '--json');
            if (again !== null) expect(withLine(again)).toBe(await fresh('today', '--json'));
          }
        },
      ),
      { numRuns: 10 },
    );
  });
});

describe('an answer is not kept', () => {
  const isKept = async (...argv: string[]) => {
    await home.run(...argv);
    return kept(...argv) !== null;
  };

  it('while a session is open, for it tells since when', async () => {
    doSession(home, { sets: 1, close: false });
    age(home.folder);
    expect(await isKept('today')).toBe(false);
  });

  it('within a minute of the last change, which may not have ended', async () => {
    home.wall = Date.now();
    await home.run('weigh', '80', '--sure');
    expect(await isKept('today')).toBe(false);
  });

  it('where something is wrong, which is told each time', async () => {
    const path = journalFiles()[0] ?? '';
    rewrite(path, (text) => `${text}{"torn`);
    age(home.folder);
    expect((await home.run('today')).err).not.toBe('');
    expect(await isKept('today')).toBe(false);
  });

  it('where no program is remembered, for any file may become the one', async () => {
    home.writeSettings({ cautions: 'read' });
    age(home.folder);
    expect(await isKept('today')).toBe(false);
  });

  it('where something was recorded for a day that is still to come', async () => {
    home.wall += 24 * HOUR;
    await home.run('weigh', '80', '--sure');
    home.wall -= 24 * HOUR;
    age(home.folder);
    expect(await isKept('today')).toBe(false);
  });

  it('where it cannot be written', async () => {
    mkdirSync(keptAnswerPath(home.ports(), 'answer'), { recursive: true });
    expect((await home.run('today')).status).toBe(0);
    expect(await isKept('today')).toBe(false);
  });
});
