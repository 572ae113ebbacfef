import { bisector } from 'd3-array';
import type { Temporal } from 'temporal-polyfill';
import type { Past, SessionDone } from '../progression/past.ts';
import type { Prescription } from '../progression/prescription.ts';
import type { SessionState } from '../session/state.ts';
import { dayNumber } from '../training/day-number.ts';
import type { Gear } from '../training/gear.ts';
import type { Length } from '../training/length.ts';
import { type Mass, micrograms } from '../training/mass.ts';
import { massTrend } from '../training/mass-trend.ts';
import { type DatedMass, dailyMasses } from './daily-mass.ts';
import type { Damage } from './lines.ts';
import type { JournalEvent } from './records.ts';

export interface WeighIn extends DatedMass {
  /** Id of its event. */
  readonly id: string;
  /** When it was recorded, in epoch milliseconds. */
  readonly at: number;
  /** It looked like a slip, and the lifter said that it is right. */
  readonly sure?: boolean;
}

export interface WaistReading {
  /** Id of its event. */
  readonly id: string;
  readonly date: Temporal.PlainDate;
  readonly length: Length;
}

/** Something was deleted, and its deletion not undone. */
export interface Deletion {
  /** Id of its event: what an undo names. */
  readonly id: string;
  /** Id of the event, set or session that is gone. */
  readonly of: string;
}

/** A session that was opened and neither closed nor discarded. */
export interface OpenSession {
  readonly session: string;
  readonly state: SessionState;
  /** This device wrote to it last, so it can go on without taking over. */
  readonly own: boolean;
  readonly foreign: boolean;
  /** Name of the device that went on with it last. */
  readonly device: string;
  /** Path of that file below the data folder. */
  readonly file: string;
}

/** The session to go on with: the latest that is open and was fully understood. */
export const openSessionOf = ({ open }: Pick<History, 'open'>): OpenSession | null =>
  open.findLast(({ foreign }) => !foreign) ?? null;

/** Everything that the journal holds, each event once, corrections applied. */
export interface History extends Past {
  /**
   * What progression goes by: of sessions and results the last 20, and those of the two years before
   * these. Asking for older ones may read another file.
   */
  readonly lately: Past;
  /** In order of date, then of being written. */
  readonly weighIns: readonly WeighIn[];
  /** The same. */
  readonly waists: readonly WaistReading[];
  /** Gear of other places, by name. */
  readonly kits: readonly { readonly name: string; readonly gear: Gear }[];
  /** As last set on any device; null where it never was. */
  readonly gear: Gear | null;
  /** In order of their start. They are not among the sessions and results. */
  readonly open: readonly OpenSession[];
  /** The sessions closed last, at most 20, in order. */
  readonly latest: readonly { readonly done: SessionDone; readonly planned: Prescription }[];
  /**
   * The sessions that were closed, with their sets and the ids of these, in the order of `sessions`.
   * Asking for them may read every file.
   */
  readonly closed: () => readonly SessionState[];
  readonly deletions: readonly Deletion[];
  readonly unreadable: readonly Damage[];
  /** Every event as it stands in the files, each once. Asking for them may read every file. */
  readonly events: () => readonly JournalEvent[];
}

/** The trend on a day uses the weigh-ins of at least so many days before it. */
export const TREND_DAYS = 120;

/** Days that follow one trend, counted from 1970: they are asked about together. Ours. */
const BLOCK_DAYS = 60;

/**
 * Trend of body mass on a day, out of readings in order of date; null before the first weigh-in and
 * where the last is longer ago than {@link TREND_DAYS}.
 */
export function bodyMassOn(
  weighIns: readonly DatedMass[],
): (date: Temporal.PlainDate) => Mass | null {
  const known = new Map<number, ReturnType<typeof trendOfBlock>>();
  return (date) => {
    const day = dayNumber(date);
    const block = Math.floor(day / BLOCK_DAYS);
    const trend = known.get(block) ?? trendOfBlock(weighIns, block);
    known.set(block, trend);
    const last = trend[byDay.right(trend, day) - 1];
    return last && day - last.day < TREND_DAYS ? last.mass : null;
  };
}

/** The trend on the days weighed of a block and before it: what is asked of many days is worked out once. */
function trendOfBlock(weighIns: readonly DatedMass[], block: number) {
  const first = block * BLOCK_DAYS;
  // However many years there are, its own readings alone are looked at.
  const from = byDate.right(weighIns, first - TREND_DAYS);
  const to = byDate.left(weighIns, first + BLOCK_DAYS);
  const daily = dailyMasses(weighIns.slice(from, to));
  const levels = massTrend(daily.map(({ day, mass }) => ({ day, value: mass })));
  return daily.map(({ day, mass }, at) => ({
    day,
    mass: micrograms(Math.round(levels[at] ?? mass)),
  }));
}

const byDate = bisector(({ date }: Pick<DatedMass, 'date'>) => dayNumber(date));
const byDay = bisector(({ day }: { readonly day: number }) => day);
