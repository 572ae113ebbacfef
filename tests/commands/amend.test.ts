import { afterEach, beforeEach, expect, test } from 'vitest';
import { AHome } from './a-home.ts';
import { doSession, lifterOf, withTinyProgram } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
  withTinyProgram(home);
});
afterEach(() => home.throwAway());

interface Shown {
  readonly results: readonly {
    readonly lift: string;
    readonly session: string;
    readonly sets: readonly {
      readonly id: string;
      readonly load: number;
      readonly count: number;
      readonly reserve: number | null;
    }[];
  }[];
  readonly weigh_ins: readonly { readonly id: string; readonly mass: number }[];
}

const history = async (): Promise<Shown> => (await home.json('history')) as unknown as Shown;
const squats = async () => (await history()).results.find(({ lift }) => lift === 'back-squat');

async function firstSquat() {
  const set = (await squats())?.sets[0];
  if (!set) throw new Error('No squat was done.');
  return set;
}

test('a set is corrected; what it said before and says now is shown', async () => {
  doSession(home);
  const { id, count } = await firstSquat();
  const { status, out } = await home.run('amend', id, '--reps', '7', '--load', '42.5');
  expect(status).toBe(0);
  expect(out).toContain('Back squat, set 1 of Wed 25 Nov 2026');
  expect(out).toContain(`before  40 kg × ${count}`);
  expect(out).toContain('after   42.5 kg × 7');
  expect(await firstSquat()).toEqual({ id, load: 42.5, count: 7, reserve: null });
});

test('what a correction came to is told as data, and a dry run says that nothing was written', async () => {
  doSession(home);
  const { id } = await firstSquat();
  const dry = await home.json('amend', id, '--delete', '--dry-run');
  expect(dry).toMatchObject({ schema: 1, id, written: false });
  expect((await firstSquat()).id).toBe(id);
  expect(await home.json('amend', id, '--reps', '7')).toMatchObject({ written: true });
});

test.each([
  [['--reserve', '10'], 0],
  [['--reserve', '11'], 2],
  [['--reps', '901'], 2],
])('%j: what no set can have is refused', async (words, wanted) => {
  doSession(home);
  const { id } = await firstSquat();
  expect((await home.run('amend', id, ...words)).status).toBe(wanted);
});

test('of two corrections of one number the later one counts, and effort may be unknown', async () => {
  doSession(home);
  const { id } = await firstSquat();
  await home.run('amend', id, '--reps', '7');
  await home.run('amend', id, '--reps', '6', '--reserve', 'none');
  expect(await firstSquat()).toMatchObject({ count: 6, reserve: null });
});

test('a set is deleted, and brought back with what was corrected before', async () => {
  doSession(home);
  const { id } = await firstSquat();
  await home.run('amend', id, '--reps', '8');
  const { out } = await home.run('amend', id, '--delete');
  expect(out).toContain('Deleted: Back squat, set 1');
  expect((await squats())?.sets).toHaveLength(1);
  expect((await home.run('amend', id, '--reps', '7')).err).toContain(`"${id}" was deleted.`);
  expect((await home.run('amend', id, '--restore')).out).toContain('Brought back: Back squat');
  expect(await firstSquat()).toMatchObject({ id, count: 8 });
  expect((await home.run('amend', id, '--restore')).err).toContain('is deleted.');
});

test('a set can be deleted, brought back, and deleted again', async () => {
  doSession(home);
  const { id } = await firstSquat();
  for (const what of ['--delete', '--restore', '--delete']) await home.run('amend', id, what);
  expect((await squats())?.sets).toHaveLength(1);
  await home.run('amend', id, '--restore');
  expect((await squats())?.sets).toHaveLength(2);
});

test('a session is deleted with all that is in it, and brought back', async () => {
  doSession(home);
  const before = await history();
  const session = before.results[0]?.session ?? '';
  const { out } = await home.run('amend', session, '--delete');
  expect(out).toContain('Deleted: Session of Wed 25 Nov 2026: Tiny, day A');
  expect((await history()).results).toEqual([]);
  await home.run('amend', session, '--restore');
  expect(await history()).toEqual(before);
});

test('a weigh-in is deleted and brought back, and never corrected in place', async () => {
  await home.run('weigh', '82.4');
  const id = (await history()).weigh_ins[0]?.id ?? '';
  expect((await home.run('history', '--ids')).out).toContain(`82.4 kg  ${id}`);
  expect((await home.run('amend', id, '--load', '80')).err).toContain('Delete it with --delete');
  await home.run('amend', id, '--delete');
  expect((await history()).weigh_ins).toEqual([]);
  await home.run('amend', id, '--restore');
  expect((await history()).weigh_ins).toMatchObject([{ id, mass: 82.4 }]);
});

test('the ids that are shown are those that are taken', async () => {
  doSession(home);
  const { out } = await home.run('history', '--ids');
  const { id } = await firstSquat();
  expect(out).toContain(`  set 1  ${id}`);
  expect(out).toContain(`session ${(await squats())?.session}`);
});

test('what cannot be done is said in a sentence, and changes nothing', async () => {
  doSession(home);
  const { id } = await firstSquat();
  const before = await history();
  const session = before.results[0]?.session ?? '';
  const cases: readonly (readonly [readonly string[], string])[] = [
    [['nothing:1', '--reps', '5'], 'Nothing recorded has the id "nothing:1".'],
    [[id], 'Nothing was said about what to correct'],
    [[id, '--reps', 'many'], '--reps is "many".'],
    [[id, '--reps', '61'], 'A set cannot have 61 reps'],
    [[id, '--reps', '5', '--delete'], '--delete was given with new numbers.'],
    [[id, '--load', '-20'], 'The load of Back squat cannot be so.'],
    [[session, '--reps', '5'], 'A session has no numbers of its own'],
    [[id, '--restore'], `Nothing of the id "${id}" is deleted.`],
  ];
  for (const [words, sentence] of cases) {
    const { status, err } = await home.run('amend', ...words);
    expect([words, status, err]).toEqual([words, 2, expect.stringContaining(sentence)]);
  }
  expect(await history()).toEqual(before);
});

test('a session that is open is corrected where it runs', async () => {
  doSession(home, { sets: 1, close: false });
  const open = (await home.json('today')).session as string;
  const { status, err } = await home.run('amend', open, '--delete');
  expect(status).toBe(2);
  expect(err).toContain('still open');
});

test('what is deleted is listed, each with the id that brings it back', async () => {
  doSession(home);
  await home.run('weigh', '82');
  expect((await home.run('history', '--deleted')).err).toContain('Nothing is deleted.');
  const shown = await history();
  const session = shown.results[0]?.session ?? '';
  const weighed = shown.weigh_ins[0]?.id ?? '';
  const { id } = await firstSquat();
  for (const each of [id, weighed, session]) await home.run('amend', each, '--delete');
  const { out } = await home.run('history', '--deleted');
  expect(out).toMatch(/^session of Wed 25 Nov 2026, Tiny, day \w+ {2}\S+$/m);
  expect(out).toMatch(/^set of Wed 25 Nov 2026, 40 kg × \d+ {2}\S+$/m);
  expect(out).toMatch(/^weigh-in of 2026-11-25, 82 kg {2}\S+$/m);
  for (const each of [session, id, weighed]) {
    expect(out).toContain(each);
    await home.run('amend', each, '--restore');
  }
  expect((await history()).results).toEqual(shown.results);
  expect((await history()).weigh_ins).toEqual(shown.weigh_ins);
});

test('a set of a deleted session is not corrected unseen: the session is named', async () => {
  doSession(home);
  const { id } = await firstSquat();
  const session = (await history()).results[0]?.session ?? '';
  await home.run('amend', session, '--delete');
  const { status, err } = await home.run('amend', id, '--reps', '7');
  expect(status).toBe(2);
  expect(err).toContain('belongs to a session that was deleted');
  expect(err).toContain(`amend ${session} --restore`);
});

test('a load of 0 on a barbell is asked about, for a bar weighs something', async () => {
  doSession(home);
  const [set] = lifterOf(home).journal().history().results[0]?.sets ?? [];
  const { status, err } = await home.run('amend', set?.id ?? '', '--load', '0');
  expect([status, err]).toEqual([
    2,
    expect.stringContaining('Back squat at 0: even an empty bar weighs something.'),
  ]);
});
