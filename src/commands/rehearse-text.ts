import { loadWords } from '../progression/load-words.ts';
import type { Move } from '../progression/prescription.ts';
import { REHEARSAL_LIMITS } from '../rehearsal/verdict-of.ts';
import type { RehearsedTrack, RehearsedWeek } from '../rehearsal/weeks-of.ts';
import { barRows } from '../report/bar-rows.ts';
import { drawPlot } from '../report/plot.ts';
import { textTable } from '../report/table.ts';
import { wrapped } from '../text/columns.ts';
import { dayWords } from '../text/day-words.ts';
import { massText, type Unit } from '../training/mass.ts';
import type { ToldRehearsal } from './rehearse-json.ts';

const NOT_A_FORECAST =
  'A simulated lifter, to compare programs with each other; not a forecast for you. Strength follows a fitness–fatigue model (Banister 1975); --json prints its numbers.';

const PLOT_ROWS = 10;

/** A rehearsal as lines of at most `width` columns. */
export function rehearseText(told: ToldRehearsal, width: number): string {
  const { program, options, weeks, verdict, leftOut } = told;
  const head = [
    program.name,
    `${weeks.length} weeks from ${dayWords(options.from)}`,
    options.loss > 0 ? `losing ${options.loss} % a week` : 'body weight steady',
    ...(options.minutes === undefined ? [] : [`sessions cut to ${options.minutes} min`]),
    `seed ${options.seed}`,
  ].join(' · ');
  const muscles = verdict.muscles.map(({ muscle, mean }) => ({
    label: muscle.replaceAll('-', ' '),
    value: mean,
    text: mean.toFixed(1),
  }));
  const [low, high] = REHEARSAL_LIMITS.hardSets;
  return [
    wrapped(head, width),
    wrapped(NOT_A_FORECAST, width),
    ...leftOut.map((words) => wrapped(`! ${words} It is left out here.`, width)),
    [''],
    ['Strength truly kept, in % of the start; shaded: under 97 %'],
    keptPlot(weeks, width),
    [''],
    weekTable(weeks, width),
    [''],
    ['Loads and reps of the last session in the first and in the last week'],
    loadTable(weeks, program.unit, width),
    [''],
    [`Hard sets in an average week; aim: ${low} to ${high}`],
    barRows(muscles, REHEARSAL_LIMITS.hardSets, width, 'braille'),
    [''],
    ...conclusions(told).map((line) => wrapped(line, width)),
  ]
    .flat()
    .join('\n');
}

function keptPlot(weeks: readonly RehearsedWeek[], width: number): string[] {
  const last = weeks.at(-1)?.week ?? 1;
  const line = REHEARSAL_LIMITS.kept * 100;
  const floor = Math.min(line - 0.5, ...weeks.map(({ kept }) => kept * 100 - 0.5));
  return drawPlot(
    {
      lines: [{ as: 'line', points: weeks.map(({ week, kept }) => [week, kept * 100] as const) }],
      bands: [
        {
          edges: [
            [1, floor, line],
            [last, floor, line],
          ],
        },
      ],
      yHolds: [line, 100],
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

function weekTable(weeks: readonly RehearsedWeek[], width: number): string[] {
  const rows = weeks.map(({ week, sessions, minutes, kept, lighter, tracks, hardSets }) => {
    const moves = tracks.flatMap((track) => track.moves);
    const sets = [...hardSets.values()];
    return [
      `${week}`,
      `${sessions}`,
      minutes === null ? '' : `${Math.round(minutes)}`,
      ...MOVES.map((move) => `${moves.filter((each) => each === move).length || ''}`),
      sets.length === 0 ? '' : `${Math.max(...sets)}`,
      `${(kept * 100).toFixed(1)}`,
      lighter ? 'lighter week' : '',
    ];
  });
  return textTable(
    [
      { heading: 'week', align: 'right' },
      { heading: 'sessions', align: 'right', dropFirst: 1 },
      { heading: 'min', align: 'right' },
      ...MOVES.map((heading) => ({ heading, align: 'right' as const })),
      { heading: 'most sets', align: 'right', dropFirst: 2 },
      { heading: 'kept %', align: 'right' },
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
  const rows = [...last.values()].map((track) => [
    track.name,
    done(first.get(track.track) ?? track),
    done(track),
    `${(track.kept * 100).toFixed(1)}`,
  ]);
  return textTable(
    [
      { heading: 'exercise', align: 'left' },
      { heading: 'first', align: 'left', dropFirst: 1 },
      { heading: 'last', align: 'left' },
      { heading: 'kept %', align: 'right' },
    ],
    rows,
    width,
  );
}

function conclusions({ program, weeks, verdict }: ToldRehearsal): string[] {
  const { kept, lowest, keepsStrength, muscles, minutes, longest, lighterWeeks } = verdict;
  const percent = (share: number) => `${(share * 100).toFixed(1)} %`;
  const named = (judged: string) =>
    muscles
      .filter((each) => each.judged === judged)
      .map(({ muscle, mean }) => `${muscle.replaceAll('-', ' ')} ${mean.toFixed(1)}`)
      .join(', ');
  const [much, little] = [named('too-much'), named('too-little')];
  const body = weeks.findLast(({ bodyMass }) => bodyMass !== null)?.bodyMass;
  return [
    `Strength: ${percent(kept)} kept at the end, ${percent(lowest)} at the lowest. ${
      keepsStrength ? 'It holds.' : 'Under 97 %: this program does not keep it.'
    }`,
    ...(much ? [`Too much to recover from in a cut: ${much} hard sets a week.`] : []),
    ...(little ? [`Little: ${little} hard sets a week.`] : []),
    ...(!much && !little ? ['Hard sets: every muscle with direct work gets 6 to 10 a week.'] : []),
    `Sessions: about ${Math.round(minutes)} min, ${Math.round(longest)} in the longest week.`,
    ...(lighterWeeks > 0 ? [`Lighter weeks that the lifter had to take: ${lighterWeeks}.`] : []),
    ...(body ? [`Body weight at the end: ${massText(body, program.unit, 1)}.`] : []),
  ];
}
