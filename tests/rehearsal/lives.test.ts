import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import type { Program } from '../../src/program/program.ts';
import { drawModel } from '../../src/rehearsal/draws.ts';
import { type RehearsedSession, rehearse } from '../../src/rehearsal/rehearse.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { dayAndMonth } from '../../src/text/day-words.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { inUnit, kilograms } from '../../src/training/mass.ts';
import { forCuts, shippedPrograms } from '../figures/programs.ts';

/**
 * What a whole life comes to, a line an exercise: what was asked, and why, and what was done. It is
 * kept as text in `lives/`, so that no change of progression goes unseen; `-u` writes it anew, and
 * you read the difference.
 */
const FROM = Temporal.PlainDate.from('2026-01-05');
const named = (name: string): Program => {
  const found = forCuts(shippedPrograms()).find(({ file }) => file.endsWith(`${name}.yaml`));
  if (!found) throw new Error(`There is no ${name}.`);
  return found;
};

/** With all that befalls a lifter: weeks away, and half an hour where an hour was planned. */
test('away and short of time', async () => {
  const { sessions } = rehearse(named('three-day-lb'), {
    weeks: 12,
    loss: 0.7,
    seed: 14,
    away: [
      [14, 34],
      [42, 75],
    ],
    minutes: 30,
    from: FROM,
    bodyMass: kilograms(80),
    model: drawModel('trained', seededRandom(14)),
    gear: defaultGear('kg'),
  });
  const text = `${sessions.map(toldOf).join('\n\n')}\n`;
  await expect(text).toMatchFileSnapshot('lives/away-and-short-of-time.txt');
});

function toldOf({ date, done, state, results, bodyMass }: RehearsedSession): string {
  const minutes = Math.round((done.end - done.start) / 60_000);
  const kg = (mass: number) => Number(inUnit(mass as never, 'kg').toFixed(2));
  const head = `${dayAndMonth(date)}, day ${done.day}, ${minutes} min, ${kg(bodyMass).toFixed(1)} kg`;
  const lines = results.map(({ exercise, sets, finished }) => {
    const asked = state.prescription.exercises.find(({ track }) => track === exercise.track);
    const aims = asked?.sets.map(({ aim }) => aim).join(' ');
    const why = asked?.why.map(({ rule }) => rule).join(', ');
    const reps = sets.map(({ load, count, reserve }) => `${kg(load)}×${count}@${reserve ?? '-'}`);
    return `  ${exercise.lift}: ${exercise.move} (${why}) ${aims} → ${reps.join(' ')}${finished ? '' : ' unfinished'}`;
  });
  const warned = state.prescription.warnings.map(({ rule }) => rule).join(', ');
  return [head, ...(warned ? [`  ${warned}`] : []), ...lines].join('\n');
}
