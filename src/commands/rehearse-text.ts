import { CHECK_LIMITS } from '../program/check/check-limits.ts';
import type { Move } from '../progression/prescription.ts';
import { differenceOf, rangeOf } from '../rehearsal/draws.ts';
import { LIFTER_KINDS } from '../rehearsal/lifter-model.ts';
import { REHEARSAL_LIMITS } from '../rehearsal/verdict-of.ts';
import type { RehearsedTrack, RehearsedWeek } from '../rehearsal/weeks-of.ts';
import { barRows } from '../report/bar-rows.ts';
import { drawPlot } from '../report/plot.ts';
import { textTable } from '../report/table.ts';
import { wrapped } from '../text/columns.ts';
import { dayWords } from '../text/day-words.ts';
import { howMany, keyWords } from '../text/words.ts';
import { loadWords } from '../training/load-words.ts';
import { massText, type Unit } from '../training/mass.ts';
import { keeping, keptRange, type ToldRehearsal } from './rehearse-json.ts';

export const NOT_A_FORECAST =
  'Simulated lifters, to compare programs with each other; not a forecast for you. Strength follows a fitness–fatigue model (Banister 1975) whose numbers are drawn for each lifter from what is known of them; --json prints those of the one in the middle. A range leaves out the tenth of them at either end.';

/** Why the table of weeks may say more minutes than were asked for. */
const MINUTES_TAKEN =
  'min: what a session took. The first are cut by what sets usually take, later ones by the pace of those before.';

const PLOT_ROWS = 10;

/** A rehearsal as lines of at most `width` columns. */
export function rehearseText(told: ToldRehearsal, width: number): string {
  const { program, options, weeks, verdict, lifters, draws, leftOut } = told;
  const head = [
    program.name,
    `${howMany(weeks.length, 'week')} from ${dayWords(options.from)}`,
    options.loss > 0 ? `losing ${options.loss} % a week` : 'body weight steady',
    ...(options.minutes === undefined ? [] : [`sessions cut to ${options.minutes} min`]),
    `${howMany(draws.length, 'lifter')} ${LIFTER_KINDS[lifters.kind].does}${lifters.own ? ', growing as you did of late' : ''}`,
    `seed ${options.seed}`,
  ].join(' · ');
  const muscles = verdict.muscles.map(({ muscle, mean }) => ({
    label: keyWords(muscle),
    value: mean,
    text: mean.toFixed(1),
  }));
  const band = CHECK_LIMITS.weeklySets[program.aim];
  const [low, high] = band;
  return [
    wrapped(head, width),
    wrapped(NOT_A_FORECAST, width),
    ...leftOut.map((words) => wrapped(`! ${words} It is left out here.`, width)),
    [''],
    ['Strength truly kept, % of the start: the lifter in the middle; the range'],
    keptPlot(told, width),
    [''],
    weekTable(told, width),
    options.minutes === undefined ? [] : wrapped(MINUTES_TAKEN, width),
    [''],
    ['The lifter in the middle: last session of the first and last week'],
    loadTable(weeks, program.unit, width),
    [''],
    [`Hard sets in an average week; aim: ${low} to ${high}`],
    barRows(muscles, band, width, 'braille'),
    [''],
    ...conclusions(told).map((line) => wrapped(line, width)),
  ]
    .flat()
    .join('\n');
}

/** What is kept in a week over the draws, in percent. */
function keptIn({ draws }: ToldRehearsal, at: number): readonly [number, number] {
  const [low, high] = rangeOf(draws.map(({ weeks }) => weeks[at]?.kept ?? 1));
  return [low * 100, high * 100];
}

function keptPlot(told: ToldRehearsal, width: number): string[] {
  const { weeks } = told;
  return drawPlot(
    {
      lines: [{ as: 'line', points: weeks.map(({ week, kept }) => [week, kept * 100] as const) }],
      bands: [{ edges: weeks.map(({ week }, at) => [week, ...keptIn(told, at)] as const) }],
      yHolds: [REHEARSAL_LIMITS.kept * 100, 100],
      xTicks: (from, to, most) => weekTicks(from, to, most),
    },
    { width, height: PLOT_ROWS, glyphs: 'braille' },
  );
}

function weekTicks(from: number, to: number, most: number) {
  const step = Math.max(1, Math.ceil((to - from) / Math.max(1, most - 1)));
  const ticks = [];
  for (let at = from; at <= to; at += step) ticks.push({ at, label: `week ${at}` });
  return ticks;
}

const MOVES: readonly Move[] = ['start', 'up', 'hold', 'ease', 'return'];

function weekTable(told: ToldRehearsal, width: number): string[] {
  const rows = told.weeks.map(
    ({ week, sessions, minutes, kept, lighter, tracks, hardSets }, at) => {
      const moves = tracks.flatMap((track) => track.moves);
      const sets = [...hardSets.values()];
      return [
        `${week}`,
        `${sessions}`,
        minutes === null ? '' : `${Math.round(minutes)}`,
        ...MOVES.map((move) => `${moves.filter((each) => each === move).length || ''}`),
        sets.length === 0 ? '' : `${Math.max(...sets)}`,
        `${(kept * 100).toFixed(1)}`,
        keptIn(told, at)
          .map((each) => each.toFixed(0))
          .join('–'),
        lighter ? 'lighter week' : '',
      ];
    },
  );
  return textTable(
    [
      { heading: 'week', align: 'right' },
      { heading: 'sessions', align: 'right', dropFirst: 1 },
      { heading: 'min', align: 'right' },
      ...MOVES.map((heading) => ({ heading, align: 'right' as const })),
      { heading: 'most sets', align: 'right', dropFirst: 2 },
      { heading: 'kept %', align: 'right' },
      { heading: 'range', align: 'right' },
      { heading: '', align: 'left', dropFirst: 3 },
    ],
    rows,
    width,
  );
}

function loadTable(weeks: readonly RehearsedWeek[], unit: Unit, width: number): string[] {
  const first = new Map<string, RehearsedTrack>();
  const last = new Map<string, RehearsedTrack>();
  for (const track of weeks.flatMap(({ tracks }) => tracks)) {
    if (!first.has(track.track)) first.set(track.track, track);
    last.set(track.track, track);
  }
  const done = ({ load, exercise, sets }: RehearsedTrack) =>
    `${loadWords(load, exercise.basis, unit)} × ${sets.map(({ count }) => count).join(', ')}`;
  const rows = [...last.values()].flatMap((track) => [
    [track.name, 'first', done(first.get(track.track) ?? track), ''],
    ['', 'last', done(track), `${(track.kept * 100).toFixed(1)}`],
  ]);
  return textTable(
    [
      { heading: 'exercise', align: 'left' },
      { heading: 'week', align: 'left', dropFirst: 2 },
      { heading: 'load and reps', align: 'left' },
      { heading: 'kept %', align: 'right', dropFirst: 1 },
    ],
    rows,
    width,
  );
}

function conclusions(told: ToldRehearsal): string[] {
  const { program, weeks, verdict, draws } = told;
  const { muscles, minutes, longest, lighterWeeks } = verdict;
  const [low, high] = CHECK_LIMITS.weeklySets[program.aim];
  const named = (judged: string) =>
    muscles
      .filter((each) => each.judged === judged)
      .map(({ muscle, mean }) => `${keyWords(muscle)} ${mean.toFixed(1)}`)
      .join(', ');
  const [much, little] = [named('too-much'), named('too-little')];
  const body = weeks.findLast(({ bodyMass }) => bodyMass !== null)?.bodyMass;
  return [
    `Strength: ${rehearsedWords(told)} kept at the end; ${keeping(told)} of ${draws.length} lifters keep 97 % or more.`,
    ...(much ? [`Many: ${much} hard sets a week.`] : []),
    ...(little ? [`Little: ${little} hard sets a week.`] : []),
    ...(!much && !little
      ? [`Hard sets: every muscle with direct work gets ${low} to ${high} a week.`]
      : []),
    `Sessions: about ${Math.round(minutes)} min, ${Math.round(longest)} in the longest week.`,
    ...(lighterWeeks > 0 ? [`Lighter weeks that the lifter had to take: ${lighterWeeks}.`] : []),
    ...(body ? [`Body weight at the end: ${massText(body, program.unit, 1)}.`] : []),
  ];
}

/** `99.2 % (97.5 to 101.0)`: the lifter in the middle, and the range without the tenth at either end. */
export function rehearsedWords(told: ToldRehearsal): string {
  const percent = (share: number) => (share * 100).toFixed(1);
  const [low, high] = keptRange(told).map(percent);
  return `${percent(told.verdict.kept)} % (range ${low} to ${high})`;
}

/** Two rehearsals side by side, the same lifters in both, as lines of at most `width` columns. */
export function compareText(first: ToldRehearsal, second: ToldRehearsal, width: number): string {
  const both = [first, second];
  const { mean, error } = differenceOf(first.draws, second.draws);
  const rows: readonly (readonly [string, (told: ToldRehearsal) => string])[] = [
    ['strength kept', rehearsedWords],
    ['a week', ({ options }) => (options.loss > 0 ? `${options.loss} % lost` : 'weight steady')],
    ['session', ({ verdict }) => `${Math.round(verdict.minutes)} min`],
    ['sets a week', ({ verdict: { muscles } }) => setsWords(muscles.map((each) => each.mean))],
    ['lighter weeks', ({ verdict }) => String(verdict.lighterWeeks)],
    [
      'body weight',
      ({ weeks, program }) => {
        const mass = weeks.findLast(({ bodyMass }) => bodyMass !== null)?.bodyMass;
        return mass ? massText(mass, program.unit, 1) : '';
      },
    ],
  ];
  const points = (share: number) => Math.abs(share * 100).toFixed(1);
  const verdict =
    Math.abs(mean) < 2 * error
      ? `No difference that these ${first.draws.length} lifters could tell: ${points(mean)} points of strength, standard error ${points(error)}.`
      : `${(mean > 0 ? second : first).name} keeps ${points(mean)} points of strength more (standard error ${points(error)} over ${first.draws.length} lifters).`;
  return [
    ...wrapped(
      `${first.name} and ${second.name} · ${howMany(first.weeks.length, 'week')} from ${dayWords(first.options.from)}`,
      width,
    ),
    ...wrapped(NOT_A_FORECAST, width),
    '',
    ...textTable(
      [
        { heading: '', align: 'left' },
        ...both.map(({ name }) => ({ heading: name, align: 'left' as const })),
      ],
      rows.map(([name, tell]) => [name, ...both.map(tell)]),
      width,
    ),
    '',
    ...wrapped(verdict, width),
  ].join('\n');
}

const setsWords = (means: readonly number[]): string =>
  means.length === 0
    ? ''
    : `${Math.min(...means).toFixed(1)} to ${Math.max(...means).toFixed(1)} a muscle`;
