import type { LengthUnit } from '../training/length.ts';
import type { Unit } from '../training/mass.ts';
import type { PlotBand, Point } from './plot.ts';

/** The numbers behind a picture, for those who would rather read them. */
export interface NumbersTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** One lift over time. */
export interface LiftPicture {
  readonly name: string;
  /** Day number and e1RM in the unit of the page. */
  readonly points: readonly Point[];
  /** What the sessions say together, and its 90 % band; the line is open across longer gaps. */
  readonly strength: {
    readonly line: readonly Point[];
    readonly gap: number;
    readonly bands: readonly PlotBand[];
  };
  /** `97 % kept`, or why it is not told. */
  readonly note: string;
  readonly table: NumbersTable;
}

/** Body weight over time, in the unit of the page. */
export interface BodyPicture {
  readonly readings: readonly Point[];
  readonly trend: readonly Point[];
  readonly band: PlotBand | null;
  /** What the shaded range is. */
  readonly bandSays: string;
  readonly table: NumbersTable;
}

/** The waist over time, in `unit`. */
export interface WaistPicture {
  readonly unit: LengthUnit;
  readonly points: readonly Point[];
  readonly table: NumbersTable;
}

/** Hard sets a week of every muscle trained. */
export interface MusclePicture {
  /** First days of the weeks, oldest first: `3 Nov`. */
  readonly weeks: readonly string[];
  readonly muscles: readonly { readonly name: string; readonly sets: readonly number[] }[];
  readonly band: readonly [low: number, high: number];
  readonly table: NumbersTable;
}

/** Strength kept against weight lost, both in percent, a point a week in order of time. */
export interface KeptPicture {
  readonly points: readonly Point[];
  readonly table: NumbersTable;
}

/** Everything that the exported page shows, ready to be drawn. */
export interface PageView {
  readonly program: string;
  /** Day of the export, in words. */
  readonly made: string;
  readonly unit: Unit;
  /** The verdict of the week. */
  readonly headline: string;
  readonly findings: readonly { readonly text: string; readonly source: string }[];
  /** The few numbers that matter most. */
  readonly figures: readonly {
    readonly name: string;
    readonly value: string;
    readonly about: string;
  }[];
  /** Null where no weigh-ins are shown; `noBody` says why. */
  readonly body: BodyPicture | null;
  readonly noBody: string | null;
  /** Null with less than two readings, and where weight is not shown. */
  readonly waist: WaistPicture | null;
  readonly kept: KeptPicture | null;
  readonly lifts: readonly LiftPicture[];
  readonly muscles: MusclePicture | null;
  /** What stands at the foot of the page. */
  readonly caution: string;
}
