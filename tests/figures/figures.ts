import { Temporal } from 'temporal-polyfill';
import type { Program } from '../../src/program/program.ts';
import { LIFTER_MODEL } from '../../src/rehearsal/lifter-model.ts';
import { rehearse } from '../../src/rehearsal/rehearse.ts';
import { seededRandom } from '../../src/rehearsal/seeded-random.ts';
import { type RehearsalVerdict, verdictOf } from '../../src/rehearsal/verdict-of.ts';
import { weeksOf } from '../../src/rehearsal/weeks-of.ts';
import { defaultGear } from '../../src/training/default-gear.ts';
import { kilograms } from '../../src/training/mass.ts';
import { massTrend } from '../../src/training/mass-trend.ts';
import { varyModel } from '../rehearsal/made-model.ts';
import { type Doses, dosesOf, isInOrder } from './doses.ts';
import { plainWeights, trendErrors, waywardWeights } from './made-weights.ts';
import { forCuts, shippedPrograms, tooMuch } from './programs.ts';
import { sampleOfLifters } from './sample-of-lifters.ts';
import { strengthFigures } from './strength-figures.ts';

/**
 * The figures of the rehearsal, at full size: `npm run figures`, or `npm run figures -- 50` for a
 * tenth of it. The test command runs a small sample of the same. Exit 1 when one does not hold.
 */
const lifters = Number(process.argv[2] ?? 500);
const draws = Math.ceil(lifters * 0.4);
const failures: string[] = [];

const say = (line: string) => process.stdout.write(`${line}\n`);
const percent = (share: number, digits = 1) => `${(share * 100).toFixed(digits)} %`;
const counts = (map: ReadonlyMap<number | null, number>) =>
  [...map]
    .sort(([a], [b]) => (a ?? Infinity) - (b ?? Infinity))
    .map(([key, count]) => `${key ?? 'never'}: ${count}`)
    .join(', ');
const must = (holds: boolean, what: string) => {
  say(`  ${holds ? 'holds' : 'FAILS'}: ${what}`);
  if (!holds) failures.push(what);
};

const FROM = Temporal.PlainDate.from('2026-01-05');
const rehearsed = (program: Program, model = LIFTER_MODEL): RehearsalVerdict => {
  const options = {
    from: FROM,
    weeks: 12,
    loss: 0.7,
    seed: 1,
    gear: defaultGear(program.unit),
    bodyMass: kilograms(80),
    model,
  };
  return verdictOf(program, weeksOf(program, rehearse(program, options), FROM));
};
const verdictLine = (program: Program, { kept, lowest, longest, muscles }: RehearsalVerdict) =>
  `  ${program.name}: kept ${percent(kept)} (lowest ${percent(lowest)}), at most ${Math.round(longest)} min, ${muscles
    .map(
      ({ muscle, mean, judged }) => `${muscle} ${mean.toFixed(1)}${judged === 'inside' ? '' : '!'}`,
    )
    .join(', ')}`;

say('Trend of body mass on made weigh-ins, from the fifth week on');
for (const [kind, make] of Object.entries({ plain: plainWeights, wayward: waywardWeights })) {
  const { bias, error } = trendErrors(make, massTrend, lifters);
  say(`  ${kind}: bias ${bias.toFixed(2)} %, error ${error.toFixed(2)} %`);
  must(Math.abs(bias) < 0.15, `the trend of ${kind} weigh-ins has no lag`);
}

say('Shipped programs, 12 weeks losing 0.7 % a week, default constants');
for (const program of forCuts(shippedPrograms())) {
  const verdict = rehearsed(program);
  say(verdictLine(program, verdict));
  must(verdict.keepsStrength, `${program.name} keeps at least 97 %`);
  must(
    verdict.muscles.every(({ judged }) => judged === 'inside'),
    `${program.name} gives every muscle with direct work 6 to 10 hard sets a week`,
  );
}
const excessive = rehearsed(tooMuch());
say(verdictLine(tooMuch(), excessive));
must(!excessive.keepsStrength, 'the excessive program does not keep 97 %');

say('The same with constants held out of every choice (all drawn within ± 30 %, seed 9001)');
const heldOut = varyModel(LIFTER_MODEL, 0.3, seededRandom(9001));
for (const program of [...forCuts(shippedPrograms()), tooMuch()]) {
  say(verdictLine(program, rehearsed(program, heldOut)));
}

const [program] = forCuts(shippedPrograms());
if (!program) throw new Error('No program is shipped.');
say(`\nDoses, ${draws} draws of all constants within ± 30 %, ${program.name}`);
const drawn: Doses[] = [];
for (let seed = 1; seed <= draws; seed += 1) {
  const model = varyModel(LIFTER_MODEL, 0.3, seededRandom(seed));
  drawn.push(dosesOf(program, tooMuch(), model, seed));
}
const mean = (name: keyof Doses) => drawn.reduce((sum, each) => sum + each[name], 0) / draws;
say(
  `  kept, means: no training ${percent(mean('none'))}, half ${percent(mean('half'))}, the program ${percent(mean('whole'))}, too much ${percent(mean('tooMuch'))}`,
);
const inOrder = drawn.filter(isInOrder).length;
must(
  inOrder >= draws * 0.9,
  `no training < half < the program > too much in ${inOrder} of ${draws} (90 % wanted)`,
);

say(`\n${lifters} lifters × 24 weeks`);
const sample = sampleOfLifters(forCuts(shippedPrograms()), lifters);
const { judged, outside, oscillations, recoveries, heldBack, worst } = sample;
say(`  ${sample.sessions} sessions, ${sample.tracks} tracks, ${judged} settled loads`);
say(`  times back and forth in a row, tracks: ${counts(oscillations)}`);
say(`  sessions to recover from ${sample.layoffs} layoffs: ${counts(recoveries)}`);
say(`  sessions at a load outgrown, ${sample.gaining} tracks that gain: ${counts(heldBack)}`);
must(
  outside <= judged * 0.01,
  `load within 10 % of what the model can do for the range, or a step: ${percent(1 - outside / judged, 2)} (99 % wanted)`,
);
const most = Math.max(...oscillations.keys());
must(most <= 2, `never more than twice back and forth in a row (most: ${most})`);
const inTime = [...recoveries].reduce(
  (sum, [took, tracks]) => sum + (took !== null && took <= 4 ? tracks : 0),
  0,
);
must(
  inTime >= 0.999 * sample.layoffs,
  `recovers from a layoff within 4 sessions: ${percent(inTime / sample.layoffs, 2)} (99.9 % wanted)`,
);
const longest = Math.max(...heldBack.keys());
must(
  longest <= 12,
  `who truly gains is never held at one load for ever (longest: ${longest} sessions at a load outgrown)`,
);
for (const line of worst.slice(0, 40)) say(`  ${line}`);

for (const takesTests of [false, true]) strengthFigures(Math.ceil(lifters * 0.08), takesTests);

process.exitCode = failures.length > 0 ? 1 : 0;
