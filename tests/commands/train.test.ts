import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, onTestFinished, test } from 'vitest';
import { main } from '../../src/commands/main.ts';
import { ROOT } from '../../src/tooling/root.mjs';
import { Emulated } from '../ui/emulated.ts';
import { AHome } from './a-home.ts';
import { doSession, lifterOf, withTinyProgram } from './a-session.ts';

/** What `holdfast` opens at a terminal, and what it says when it is left. */
let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

// Each run watches for signals until its process ends, and here many run in one.
process.setMaxListeners(50);

/** The program at a terminal; it is left when the test ends. */
class Opened extends Emulated {
  readonly end: Promise<number>;
  readonly #said: string[] = [];

  constructor(argv: readonly string[], at: AHome = home) {
    super();
    const stdin = this.keyboard as unknown as NodeJS.ReadStream;
    this.end = main({ ...at.ports([], this.#said), stdin, stdout: this.stdout }, argv);
    onTestFinished(async () => void (await this.left('\u0003')));
  }

  get said(): string {
    return this.#said.join('');
  }

  /** As long as it has not ended. */
  override until(wanted: string | RegExp): Promise<string> {
    const ended = this.end.then((status) => {
      throw new Error(`It ended with ${status}: ${this.said}`);
    });
    return Promise.race([super.until(wanted), ended]);
  }

  async left(keys: string) {
    this.type(keys);
    return { status: await this.end, said: this.said };
  }
}

const opened = (...argv: readonly string[]) => new Opened(argv);

const facts = () => lifterOf(home).journal().history().events();

const threeDays = () =>
  home.writeSettings({ program: join(ROOT, 'programs', 'three-day.yaml'), cautions: 'read' });

describe('who was never here', () => {
  test('reads the first page from its top, by train as by no command at all', async () => {
    for (const argv of [[], ['train']]) {
      const page = await opened(...argv).until('Before the first session');
      expect(page.trimStart()).toMatch(/^Before the first session/);
    }
  });

  test('is asked for a program once the page was read', async () => {
    home.writeSettings({ cautions: 'read' });
    await opened().until('1 of 9');
  });

  test('looks at the demo, and is back on the first page after it', async () => {
    const at = opened();
    await at.until('Before the first session');
    at.type('\t');
    await at.until('Demo: twelve');
    at.type('q');
    await at.until('Before the first session');
    expect(at.said).toContain('A demo: twelve invented weeks');
    expect(facts()).toEqual([]);
  });
});

describe('what is due', () => {
  test('is shown first, and q leaves without a word', async () => {
    withTinyProgram(home);
    const at = opened();
    await at.until('Tiny · A');
    expect(await at.left('q')).toEqual({ status: 0, said: '' });
  });

  test('is the day that was named, cut to the minutes that there are', async () => {
    threeDays();
    const page = await opened('--day', 'b').until('begin');
    expect(page).toContain('Three days · B');
    expect(await opened('train', '--minutes', '20').until('begin')).toContain('Cut to 20 min');
  });

  test('is trained with another kit, said once however often it is asked for', async () => {
    withTinyProgram(home);
    for (let times = 0; times < 2; times += 1) {
      const at = opened('train', '--kit', 'rack, bar and bench');
      await at.until('Tiny · A');
      await at.left('q');
    }
    expect(facts()).toMatchObject([{ rule: 'kit-today', answer: 'yes' }]);
  });

  test('is printed where a document is asked for', async () => {
    withTinyProgram(home);
    expect(JSON.parse((await home.run('train', '--json')).out)).toMatchObject({ day: 'A' });
  });
});

describe('a session that is open', () => {
  beforeEach(() => {
    withTinyProgram(home);
    doSession(home, { sets: 1, close: false });
  });

  test('goes on where it was left, and is said to stay open', async () => {
    const at = opened();
    await at.until('set 2 of 2');
    expect(await at.left('q')).toEqual({
      status: 0,
      said: expect.stringMatching(/The session stays open\. Day A, begun Wed 25 Nov: 1 of 3 sets/),
    });
    expect(facts().filter(({ type }) => type === 'session-opened')).toHaveLength(1);
  });

  test('is not spoken of after ctrl-c, nor once it is closed', async () => {
    const at = opened();
    await at.until('set 2 of 2');
    expect(await at.left('\u0003')).toEqual({ status: 130, said: '' });
    const closing = opened();
    await closing.until('set 2 of 2');
    closing.type('f\u001b[B ');
    await closing.until('Next time');
    expect(await closing.left('q')).toEqual({ status: 0, said: '' });
  });

  test('is asked about after twelve hours', async () => {
    home.wall += 13 * 3_600_000;
    await opened().until('A session is still open');
  });

  test('is the one of its own day, in small letters too', async () => {
    await opened('--day', 'a').until('set 2 of 2');
  });

  test('is closed before another day begins', async () => {
    const at = opened('--day', 'B');
    expect(await at.end).toBe(2);
    expect(at.said).toContain('Another session is open. Day A, begun Wed 25 Nov');
    expect(at.said).toContain('close it there before day B');
  });

  test('goes on with its own gear: another kit is refused, and not kept', async () => {
    const many = facts().length;
    const at = opened('train', '--kit', 'rack, bar and bench');
    expect(await at.end).toBe(2);
    expect(at.said).toContain('It goes on with the gear that it was begun with.');
    expect(at.said).toContain('l in the list behind x takes another lift there');
    expect(facts()).toHaveLength(many);
  });

  test('is not printed as another day, or with other gear', async () => {
    for (const [option, name, said] of [
      ['--day', 'B', 'Another session is open. Day A, begun Wed 25 Nov: 1 of 3 sets done.'],
      ['--kit', 'dumbbells', 'It goes on with the gear that it was begun with.'],
    ] as const) {
      const { status, out, err } = await home.run('today', option, name);
      expect([status, out]).toEqual([2, '']);
      expect(err).toContain(said);
    }
    expect((await home.run('today', '--day', 'a')).status).toBe(0);
  });

  test('on another machine is only shown there, until the lifter says so', async () => {
    const other = new AHome();
    onTestFinished(() => other.throwAway());
    withTinyProgram(other);
    cpSync(home.data, other.data, { recursive: true });
    const at = new Opened([], other);
    expect(await at.until('go on')).toMatch(/open on laptop since 18:00(?!:)/);
    await at.left('q');
    expect(lifterOf(other).journal().history().events()).toEqual(facts());
  });
});

test('with minutes, a session that is open asks what is left, the nearest chosen', async () => {
  threeDays();
  doSession(home, { sets: 1, close: false });
  await opened('train', '--minutes', '25').until('▸ 20 minutes');
});
