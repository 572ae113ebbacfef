import { afterEach, beforeEach, expect, test } from 'vitest';
import { todaySchema } from '../../src/commands/today-schema.ts';
import { AHome } from './a-home.ts';
import { doSession } from './a-session.ts';

let home: AHome;
beforeEach(() => {
  home = new AHome();
});
afterEach(() => home.throwAway());

test.each(['A', 'B', 'C'])(
  'day %s fits into 30 and 20 minutes, and says what was cut',
  async (day) => {
    for (const most of [30, 20]) {
      const { minutes, short, exercises } = await home.json(
        'today',
        '--day',
        day,
        '--minutes',
        `${most}`,
      );
      expect(minutes).toBeLessThanOrEqual(most);
      expect(minutes).toBeGreaterThan(most - 5);
      expect(exercises).not.toEqual([]);
      expect(short).toMatchObject({
        minutes: most,
        cut: expect.arrayContaining([expect.objectContaining({ rule: 'short-sets' })]),
      });
      const { out } = await home.run('today', '--day', day, '--minutes', `${most}`);
      expect(out).toContain(`Cut to ${most} min:\n`);
    }
  },
);

test('what it prints as JSON keeps to its schema, cut or whole', async () => {
  for (const minutes of ['20', '180']) {
    const printed = await home.json('today', '--minutes', minutes);
    expect(todaySchema.parse(printed)).toEqual(printed);
  }
});

test('of a day that was begun, the minutes go to what is left of it', async () => {
  const warmUps = 3;
  doSession(home, { sets: warmUps + 4 });
  home.wall += 24 * 3_600_000;
  const { minutes, exercises } = await home.json('today', '--minutes', '30');
  const lifts = (exercises as readonly { readonly lift: string }[]).map(({ lift }) => lift);
  expect(lifts).not.toContain('back-squat');
  expect(lifts).toEqual(expect.arrayContaining(['bench-press', 'barbell-row']));
  expect(minutes).toBeGreaterThan(25);
  expect(minutes).toBeLessThanOrEqual(30);
});

test('a day that fits is whole', async () => {
  const { short, minutes } = await home.json('today', '--minutes', '90');
  expect([short, minutes]).toEqual([null, 54]);
});

test.each(['9', '181', 'half an hour', '-20'])('%s minutes are refused', async (minutes) => {
  const { status, err } = await home.run('today', `--minutes=${minutes}`);
  expect(status).toBe(2);
  expect(err).toContain('whole number from 10 to 180');
});
