import type { Reason } from '../training/rule.ts';
import { type Aims, buildingAims, matchAims } from './aims.ts';
import { aimQuestion, type Case, exerciseFacts, firstCount, type Ruling } from './case.ts';
import { isLongWayDown } from './judge-missed.ts';
import { everyHigh, minisWanted } from './judge-up.ts';
import { stepShare } from './rack.ts';
import { because, type ProgressionRule } from './rules/progression-rules.ts';
import { spareAfter } from './story.ts';

/** Same load, same reps, for a reason of its own. */
export function match(each: Case, rule: ProgressionRule): Ruling {
  return held(each, matchAims(aimQuestion(each)), [
    because(rule, exerciseFacts(each.exercise, { load: each.load })),
  ]);
}

/** Not finished: the aims of last time stand, where they were for this load. */
export function unfinished(each: Case): Ruling {
  const { exercise } = each.last.result;
  const aims = matchAims(aimQuestion(each));
  const same = exercise.load === each.load ? exercise.sets.map(({ aim }) => aim) : [];
  const why = because('hold-unfinished', exerciseFacts(each.exercise, { load: each.load }));
  return held(
    each,
    aims.map((aim, at) => same[at] ?? aim),
    [why],
  );
}

export function moreMinis(each: Case): Ruling {
  const facts = exerciseFacts(each.exercise, {
    load: each.load,
    done: firstCount(each.last),
    wanted: Math.min(minisWanted(each), each.last.minis.length + 1),
  });
  return held(each, matchAims(aimQuestion(each)), [because('hold-cluster-minis', facts)]);
}

export function stepTooFar(each: Case): Ruling {
  const { gate, load, last } = each;
  if (gate.kind !== 'far') throw new Error('The step is not too far.');
  const expected = Math.max(0, Math.floor(gate.expected));
  const facts = exerciseFacts(each.exercise, {
    load,
    next: gate.step,
    done: firstCount(last),
    expected,
  });
  return held(each, matchAims(aimQuestion(each)), [because('hold-step-too-far', facts)]);
}

/** Same load: match, and one rep more where the last effort allows it. */
export function build(each: Case): Ruling {
  const aims = buildingAims(aimQuestion(each));
  return held(each, aims.counts, [effort(each, aims), ...towardsNext(each)]);
}

function effort(each: Case, { more, tooHard, tooEasy, counts }: Aims): Reason {
  const { load, reserve, last, range } = each;
  if (tooEasy !== null) {
    const left = last.sets[tooEasy]?.reserve ?? 0;
    return because(
      'hold-fill-reserve',
      exerciseFacts(each.exercise, {
        load,
        set: tooEasy + 1,
        left,
        wanted: reserve[1],
        aims: [...counts],
      }),
    );
  }
  if (more !== null) {
    return because(
      'hold-add-rep',
      exerciseFacts(each.exercise, {
        load,
        set: more + 1,
        aim: counts[more] ?? 0,
        ...(tooHard !== null && { hard: tooHard + 1 }),
      }),
    );
  }
  if (tooHard === null) return because('hold-match', exerciseFacts(each.exercise, { load }));
  const hard = last.sets[tooHard];
  const left = hard?.reserve ?? 0;
  return because(
    (hard?.count ?? 0) > range[0] ? 'hold-reserve' : 'hold-reserve-at-low',
    exerciseFacts(each.exercise, {
      load,
      set: tooHard + 1,
      left,
      wanted: reserve[0],
      low: range[0],
      lower: !isLongWayDown(each),
    }),
  );
}

/** What stands between this load and the next, where it is more than the top of the range. */
function towardsNext(each: Case): readonly Reason[] {
  const { gate, load, range, story, last, timed, rack } = each;
  const target = gate.target;
  if (gate.kind === 'top') {
    return everyHigh(each)
      ? [
          because(
            'hold-no-heavier',
            exerciseFacts(each.exercise, { load, target, done: firstCount(last) }),
          ),
        ]
      : [];
  }
  if (gate.kind === 'once') {
    const facts = { load, next: gate.step, done: firstCount(last) };
    return [because('hold-once-after-tries', exerciseFacts(each.exercise, facts))];
  }
  if (gate.kind !== 'closed') return [];
  if (gate.unlikely !== null && everyHigh(each)) {
    const facts = { load, next: gate.step, set: gate.unlikely + 1, low: range[0] };
    return [because('hold-unlikely', exerciseFacts(each.exercise, facts))];
  }
  if (gate.leave !== null) {
    const share = stepShare(rack, load, gate.step);
    const facts = { load, next: gate.step, high: range[1], leave: gate.leave, share };
    return [because('hold-leave-more', exerciseFacts(each.exercise, facts))];
  }
  if (target <= range[1] && gate.inReach) return [];
  const tries = spareAfter(story.failedTries, timed);
  if (tries > 0 && firstCount(last) < range[1] + tries && story.failedLoad !== null) {
    return [
      because(
        'hold-after-try',
        exerciseFacts(each.exercise, { load, next: story.failedLoad, target }),
      ),
    ];
  }
  const share = stepShare(rack, load, gate.step);
  if (!gate.inReach) {
    return [
      because('hold-gap', exerciseFacts(each.exercise, { load, next: gate.step, target, share })),
    ];
  }
  return [
    because(
      'hold-reach-target',
      exerciseFacts(each.exercise, { load, next: gate.step, target, share }),
    ),
  ];
}

function held(each: Case, aims: readonly number[], why: readonly Reason[]): Ruling {
  return {
    move: 'hold',
    load: each.load,
    aims,
    top: Math.max(each.range[1], each.gate.target),
    why,
  };
}
