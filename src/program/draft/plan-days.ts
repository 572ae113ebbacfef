import { directMuscles, type Lift, type Muscle } from '../../training/lift.ts';
import { inTurn } from '../../training/pairing.ts';
import { CHECK_LIMITS } from '../check/check-limits.ts';
import { loadableStart } from '../check/coarse-step.ts';
import { asPaired } from '../check/planned-work.ts';
import { type Exercise, setsOf } from '../program.ts';
import { barredBy, exerciseBefore, lineUp } from './choose-lift.ts';
import { DRAFT_LIMITS, type Pace } from './draft-limits.ts';
import { draftedExercise, exerciseWithSets, setLimits } from './drafted-exercise.ts';
import {
  type DayPlans,
  inOrder,
  isOverdone,
  isRoomFor,
  isTrainedNextTo,
  mostMinutes,
  secondsOf,
  setsByMuscle,
  sharesMuscle,
  wantedMuscles,
  wantedSets,
} from './room-in-week.ts';
import {
  BY_COMPOUNDS,
  DIRECT,
  FIRST_DIRECT,
  FOCUS_ONLY,
  LARGE,
  LOWER_BODY,
  MOVEMENTS,
  MOVEMENTS_LIKE,
  SKELETONS,
  type Slot,
} from './skeleton.ts';
import { startFrom } from './start-load.ts';
import type { Wishes } from './wishes.ts';

/**
 * A week the way a coach lays it out: every movement once, what compounds hardly reach, the
 * movements a second time, every other muscle's own work, then sets until the week's volume is
 * there. Each step takes what still fits into the minutes and stays under the most that is
 * recovered from.
 */
export function planDays(wishes: Wishes, lifts: ReadonlyMap<string, Lift>, pace: Pace): DayPlans {
  const week = new Week(wishes, lifts, pace);
  const { once, again } = SKELETONS[wishes.days];
  const gone = week.keepBefore();
  week.addMovements(gone ?? [], 'again');
  week.addMovements(once);
  week.addLiked();
  week.addDirect(FIRST_DIRECT);
  if (!gone) {
    week.addMovements(again, 'again');
    week.strengthen();
  }
  week.addDirect(wantedMuscles(wishes));
  week.spread(wantedMuscles(wishes));
  week.fillUp(wantedMuscles(wishes));
  return pace.pairs ? week.days.map((day) => inTurn(day, wishes.gear, asPaired)) : week.days;
}

/** Lifts tried for a place: where the best does not fit, a far worse one is no answer. */
const TRIED = 2;

class Week {
  days: Exercise[][];
  readonly #wishes: Wishes;
  readonly #lifts: ReadonlyMap<string, Lift>;
  readonly #pace: Pace;

  constructor(wishes: Wishes, lifts: ReadonlyMap<string, Lift>, pace: Pace) {
    this.#wishes = wishes;
    this.#lifts = lifts;
    this.#pace = pace;
    this.days = Array.from({ length: wishes.days }, () => []);
  }

  /**
   * The days of a program with as many stay as they are, but for what is barred or too long. Gives
   * the movements of the compounds that go, each on its day; null where no day stays.
   */
  keepBefore(): readonly Slot[] | null {
    const before = this.#wishes.from?.program.days ?? [];
    if (before.length !== this.days.length) return null;
    this.days = before.map(({ exercises }) => {
      const kept = exercises
        .filter(({ lift }) => barredBy(lift, this.#wishes) === null)
        .map((exercise) => ({
          ...exercise,
          start:
            startFrom(exercise, this.#wishes)?.start ?? loadableStart(exercise, this.#wishes.gear),
        }));
      return this.#shortened(kept);
    });
    return before.flatMap(({ exercises }, day) =>
      exercises
        .filter(({ lift }) => lift.kind === 'compound' && barredBy(lift, this.#wishes) !== null)
        .map(({ lift }) => ({ day, movements: MOVEMENTS_LIKE[lift.pattern] ?? [] })),
    );
  }

  #shortened(day: Exercise[]): Exercise[] {
    let left = day;
    while (left.length > 1 && !this.#fits(left)) {
      const most = left.findLastIndex((one) => setsOf(one) > setLimits(one)[0]);
      const last = left.findLastIndex(({ lift }) => lift.kind === 'isolation');
      left =
        most >= 0
          ? left.map((one, at) => (at === most ? exerciseWithSets(one, setsOf(one) - 1) : one))
          : left.filter((_, at) => at !== (last >= 0 ? last : left.length - 1));
    }
    return left;
  }

  /** Fills slots in their order; those that a lift was asked for come first. */
  addMovements(slots: readonly Slot[], round: 'once' | 'again' = 'once'): void {
    const isAsked = ({ movements }: Slot) =>
      this.#candidates(movements).some(({ key }) => this.#isOpenWish(key));
    const inOrder = [...slots.filter(isAsked), ...slots.filter((slot) => !isAsked(slot))];
    for (const slot of round === 'again' ? inOrder : slots) {
      const found = this.#candidates(slot.movements);
      const isThere = this.days.flat().some(({ lift }) => isOf(slot, lift));
      if (round === 'once' && isThere) continue;
      const homes = round === 'once' ? [slot.day, ...this.#bySlack()] : [slot.day];
      this.#addFirst(found, homes);
    }
  }

  #candidates(movements: Slot['movements']): readonly Lift[] {
    const lists = movements.map((movement) => MOVEMENTS[movement]);
    return lineUp(lists, this.#taken(), this.#wishes, this.#lifts).slice(0, TRIED);
  }

  readonly #taken = (): ReadonlySet<string> =>
    new Set(this.days.flat().map(({ lift }) => lift.key));

  readonly #isOpenWish = (key: string): boolean =>
    !this.#taken().has(key) &&
    (this.#wishes.like.includes(key) || exerciseBefore(key, this.#wishes) !== null);

  /** What was asked for and no movement called for. */
  addLiked(): void {
    const { like, from } = this.#wishes;
    const before = from?.program.days.flatMap(({ exercises }) => exercises) ?? [];
    for (const key of [...like, ...before.map(({ lift }) => lift.key)]) {
      const lift = this.#lifts.get(key);
      if (!lift || !this.#isOpenWish(key) || barredBy(lift, this.#wishes) !== null) continue;
      this.#addFirst([lift], this.#homesFor(lift));
    }
  }

  /** One lift for each muscle that no lift trains directly. */
  addDirect(muscles: readonly Muscle[]): void {
    for (const muscle of muscles) {
      if (this.#directDays(muscle) === 0) this.#addDirectly(muscle);
    }
  }

  /** Work on a second day for muscles that have it on one. */
  spread(muscles: readonly Muscle[]): void {
    for (const muscle of muscles) {
      const days = this.days.filter((day) => (setsByMuscle([day]).get(muscle) ?? 0) >= 1).length;
      if (this.#directDays(muscle) > 0 && days < CHECK_LIMITS.muscleDays[0]) {
        this.#addDirectly(muscle);
      }
    }
  }

  /** Sets, then lifts, for what is furthest below its range, until nothing more fits. */
  fillUp(muscles: readonly Muscle[]): void {
    for (let isMoving = true; isMoving; ) {
      const sets = setsByMuscle(this.days);
      const lacking = muscles
        .map((muscle) => ({
          muscle,
          lacks: wantedSets(muscle, this.#wishes) - (sets.get(muscle) ?? 0),
        }))
        .filter(({ lacks }) => lacks > 0)
        .sort((a, b) => isLarge(b.muscle) - isLarge(a.muscle) || b.lacks - a.lacks);
      isMoving = lacking.some(
        ({ muscle }) =>
          this.#addSet(muscle) || this.#addDirectly(muscle) || this.#addCompound(muscle),
      );
    }
  }

  /** A third set for what the week is built on, the first movement of each day first. */
  strengthen(): void {
    const [fewest] = DRAFT_LIMITS.compoundSets;
    for (const slot of SKELETONS[this.#wishes.days].once) {
      for (const [at, day] of this.days.entries()) {
        const index = day.findIndex(
          (exercise) => isOf(slot, exercise.lift) && setsOf(exercise) === fewest,
        );
        const exercise = day[index];
        const isHere = exercise && (at === slot.day || !this.days[slot.day]!.some(isOfSlot(slot)));
        if (isHere && this.#put(at, day.with(index, exerciseWithSets(exercise, fewest + 1)))) break;
      }
    }
  }

  #addSet(muscle: Muscle): boolean {
    const places = this.days
      .flatMap((day, at) => day.map((exercise, index) => ({ exercise, at, index })))
      .filter(({ exercise }) => exercise.lift.trains[muscle] === 1)
      .filter(({ exercise }) => setsOf(exercise) < setLimits(exercise)[1])
      .sort((a, b) => setsOf(a.exercise) - setsOf(b.exercise));
    return places.some(({ exercise, at, index }) => {
      const more = this.days[at]!.with(index, exerciseWithSets(exercise, setsOf(exercise) + 1));
      return this.#put(at, more);
    });
  }

  #addDirectly(muscle: Muscle): boolean {
    const keys = DIRECT[muscle] ?? FOCUS_ONLY[muscle] ?? [];
    const found = lineUp([keys], this.#taken(), this.#wishes, this.#lifts);
    // A compound stands in only where nothing for the muscle alone can be done.
    const alone = found.filter(({ kind }) => kind === 'isolation');
    const able = alone.length > 0 ? alone : found;
    return able.some((lift) => this.#addFirst([lift], this.#homesFor(lift)));
  }

  /** One more compound for a muscle, on a day that trains it by none. */
  #addCompound(muscle: Muscle): boolean {
    const lists = (BY_COMPOUNDS[muscle] ?? []).map((movement) => MOVEMENTS[movement]);
    const found = lineUp(lists, this.#taken(), this.#wishes, this.#lifts);
    const able = found.filter(({ kind, trains }) => kind === 'compound' && trains[muscle] === 1);
    return able.some((lift) =>
      this.#addFirst(
        [lift],
        this.#homesFor(lift).filter(
          (at) =>
            !this.days[at]!.some(
              (one) => one.lift.kind === 'compound' && one.lift.trains[muscle] === 1,
            ),
        ),
      ),
    );
  }

  /** Days for one more lift: those without its muscles first, then those with most time left. */
  #homesFor(lift: Lift): readonly number[] {
    const shared = (at: number) =>
      this.days[at]!.filter((one) => sharesMuscle(one.lift, lift)).length +
      (this.days.length === 4 && isLower(lift) !== (at % 2 === 1) ? OTHER_HALF : 0);
    return this.#bySlack().toSorted((a, b) => shared(a) - shared(b));
  }

  #bySlack(): number[] {
    const seconds = this.days.map((day) => secondsOf(day, this.#pace, this.#wishes));
    return seconds.map((_, at) => at).sort((a, b) => seconds[a]! - seconds[b]! || a - b);
  }

  /** The first of the lifts on the first of the days that takes it. */
  #addFirst(lifts: readonly Lift[], homes: readonly number[]): boolean {
    return lifts.some((lift) => {
      const exercise = draftedExercise(lift, this.#wishes, this.#pace);
      return homes.some((at) => {
        const day = this.days[at]!;
        return (
          isRoomFor(lift, day) &&
          !isTrainedNextTo(this.days, at, lift) &&
          this.#put(at, inOrder(day, exercise))
        );
      });
    });
  }

  /** Takes the day if it fits into the time and no muscle has more than is recovered from. */
  #put(at: number, day: Exercise[]): boolean {
    if (!this.#fits(day)) return false;
    const plan = this.days.with(at, day);
    if (isOverdone(plan, this.days, this.#wishes)) return false;
    this.days = plan;
    return true;
  }

  #fits(day: readonly Exercise[]): boolean {
    return secondsOf(day, this.#pace, this.#wishes) <= mostMinutes(this.#wishes) * 60;
  }

  #directDays(muscle: Muscle): number {
    return this.days.filter((day) => day.some(({ lift }) => lift.trains[muscle] === 1)).length;
  }
}

/** Of four days every other one is for the lower body. */
const isLower = ({ trains }: Lift): boolean =>
  directMuscles(trains).some((muscle) => LOWER_BODY.includes(muscle));

const OTHER_HALF = 10;

const isLarge = (muscle: Muscle): number => (LARGE.includes(muscle) ? 1 : 0);

const isOf = ({ movements }: Slot, { kind, pattern }: Lift): boolean =>
  kind === 'compound' && movements.some((movement) => movement.replace(' ', '-') === pattern);

const isOfSlot =
  (slot: Slot) =>
  ({ lift }: Exercise): boolean =>
    isOf(slot, lift);
