import type { Mass } from '../training/mass.ts';
import type { Reason } from '../training/rule.ts';
import { firstMiniAim, matchAims, predictedAims } from './aims.ts';
import type { Bout } from './bout.ts';
import { aimInRange, aimQuestion, exerciseFacts, type Ruling } from './case.ts';
import { type AskedChange, type ExerciseDraft, half, MOVED } from './draft.ts';
import { whatHoldingMeans } from './holding.ts';
import { judge } from './judge.ts';
import { painLighter } from './judge-returning.ts';
import type { Past } from './past.ts';
import { madeLoadable } from './rack.ts';
import type { TrainedBefore } from './read-case.ts';
import { because, type ProgressionRule } from './rules/progression-rules.ts';

interface Setting {
  readonly bouts: readonly Bout[];
  readonly past: Past;
  readonly lighter: boolean;
  readonly cutFrom: string | null;
  readonly change: AskedChange | null;
}

/** A session of a track that has been trained before. */
export function draftLater(each: TrainedBefore, setting: Setting): ExerciseDraft {
  const { change, lighter } = setting;
  const judged = judge(change?.kind === 'go-on' ? { ...each, painGone: true } : each);
  const isEasy = lighter && MOVED.has(judged.move);
  const planned = isEasy && !judged.askPain ? lighterWeek(each) : judged;
  const verdict = change ? changed(each, planned, change) : planned;
  if (isEasy) return written(each, verdict, { halved: true, dropped: false });
  const { drop } = each;
  const fewer = drop.kind === 'begins' || drop.kind === 'stays' || verdict.dropSet;
  const dropped = !verdict.gentle && (fewer ?? false);
  const why = [
    ...verdict.why,
    ...aboutSets(each, dropped),
    ...aboutHolding(each, verdict, setting),
  ];
  return written(each, { ...verdict, why }, { halved: verdict.gentle ?? false, dropped });
}

function written(
  each: TrainedBefore,
  verdict: Ruling,
  { halved, dropped }: { readonly halved: boolean; readonly dropped: boolean },
): ExerciseDraft {
  const { exercise, reserve, range } = each;
  const cluster = exercise.style === 'cluster';
  const fewer = dropped && !halved ? 1 : 0;
  const sets = halved ? half(each.sets) : each.sets - (cluster ? 0 : fewer);
  const mostSets = cluster ? (halved ? 2 : exercise.mostSets - fewer) : 0;
  return {
    move: verdict.move,
    load: verdict.load,
    aims: verdict.aims.slice(0, sets),
    mostSets,
    miniAim: firstMiniAim(verdict.aims[0] ?? range[0], each.last),
    low: verdict.low ?? range[0],
    top: verdict.top,
    reserve: verdict.gentle ? [reserve[0] + 1, reserve[1] + 1] : reserve,
    why: verdict.why,
    askPain: verdict.askPain ?? false,
  };
}

/** Same load, two reps fewer, nothing moves. */
function lighterWeek(each: TrainedBefore): Ruling {
  const { load } = each;
  const aims = matchAims(aimInRange(each)).map((aim) => Math.max(1, aim - 2));
  return {
    move: 'hold',
    load,
    aims,
    top: each.range[1],
    why: [because('hold-lighter-week', exerciseFacts(each.exercise, { load }))],
  };
}

function changed(each: TrainedBefore, judged: Ruling, change: AskedChange): Ruling {
  if (change.kind === 'go-on') return judged;
  if (change.kind === 'lighter') return painLighter(each);
  const load: Mass = madeLoadable(each.rack, change.load);
  return {
    move: 'hold',
    load,
    aims: predictedAims(aimQuestion(each), each.rack, load),
    top: each.range[1],
    why: [because('own-load', exerciseFacts(each.exercise, { load }))],
  };
}

const SLIPPING = {
  cut: 'slipping-cut',
  maintain: 'slipping-maintain',
  build: 'slipping-build',
} as const satisfies Record<string, ProgressionRule>;

function aboutSets(each: TrainedBefore, dropped: boolean): readonly Reason[] {
  const { drop, slip, aim, exercise } = each;
  const why: Reason[] = [];
  if (slip) why.push(because(SLIPPING[aim], { by: slip.by, odds: slip.odds }));
  if (dropped) why.push(because('one-set-fewer', { style: exercise.style }));
  if (drop.kind === 'ends') why.push(because('set-comes-back'));
  if (slip && aim === 'cut' && !dropped && each.atFloor) why.push(because('volume-at-floor'));
  return why;
}

/** Said where the load is kept, and can be, and nothing was missed. */
function aboutHolding(
  each: TrainedBefore,
  verdict: Ruling,
  { bouts, past, cutFrom }: Setting,
): readonly Reason[] {
  const missed = each.last.sets.some(({ count }) => count < each.range[0]);
  const made = madeLoadable(each.rack, verdict.load) === verdict.load;
  if (verdict.move !== 'hold' || verdict.askPain || missed || each.slip || !made) return [];
  return whatHoldingMeans(each, bouts, past, cutFrom);
}
