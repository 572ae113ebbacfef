import type { Aim, Exercise, Range } from '../program/program.ts';
import { basisOf } from '../training/lift.ts';
import type { Mass } from '../training/mass.ts';
import type { Facts, Reason } from '../training/rule.ts';
import type { AimQuestion } from './aims.ts';
import type { Bout } from './bout.ts';
import type { Gate } from './gate.ts';
import type { Layoff } from './layoff.ts';
import type { LeftRange } from './left-range.ts';
import type { Move } from './prescription.ts';
import type { Rack } from './rack.ts';
import type { SetDrop } from './set-drop.ts';
import type { Story } from './story.ts';

/** Everything that the table of moves looks at: one track that has been trained before. */
export interface Case {
  readonly exercise: Exercise;
  readonly aim: Aim;
  readonly rack: Rack;
  readonly story: Story;
  readonly gate: Gate;
  readonly last: Bout;
  /** The last session's load. */
  readonly load: Mass;
  /** The low end in force (lower for a while after a step too large for the range), and the high end. */
  readonly range: Range;
  readonly reserve: Range;
  readonly timed: boolean;
  readonly daysAway: number;
  readonly layoff: Layoff | null;
  /** Not trained in this range for long, while the lift showed less than its load asks for. */
  readonly left: LeftRange | null;
  /** The lifter has said today that last time's pain is gone. */
  readonly painGone: boolean;
  readonly painTwice: boolean;
  readonly drop: SetDrop;
  /** Can a set be dropped today? */
  readonly spare: boolean;
  /** No set can go without falling under what each muscle keeps. */
  readonly atFloor: boolean;
  /** Sets that the program asks for; of a cluster the lead alone. */
  readonly sets: number;
}

/** What the table of moves says. */
export interface Ruling {
  readonly move: Move;
  readonly load: Mass;
  /** Per straight set; of a cluster the lead set. */
  readonly aims: readonly number[];
  /** What set 1 may rise to. */
  readonly top: number;
  readonly why: readonly Reason[];
  /** The low end of the range prescribed, where it is not the one judged by. */
  readonly low?: number;
  /** Half the sets and one more in reserve. */
  readonly gentle?: boolean;
  /** One set fewer from today. */
  readonly dropSet?: boolean;
  readonly askPain?: boolean;
}

/** The facts of a reason about an exercise, with those that every such sentence needs. */
export const exerciseFacts = ({ lift, style }: Exercise, facts: Facts): Facts => ({
  basis: basisOf(lift),
  counts: lift.counts,
  style,
  ...facts,
});

export const aimQuestion = (each: Case, target = each.gate.target): AimQuestion => ({
  last: each.last,
  sets: each.sets,
  range: each.range,
  target,
  reserve: each.reserve,
  timed: each.timed,
});

/** The same, where set 1 is to stay in the range, too. */
export const aimInRange = (each: Case): AimQuestion => aimQuestion(each, each.range[1]);

export const firstCount = (bout: Bout): number => bout.sets[0]?.count ?? 0;
