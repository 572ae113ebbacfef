import { type PlateKind, plateQuantity } from './gear.ts';
import { kilograms, type Mass, massOf, type Quantity, quantityText } from './mass.ts';
import type { LoadedBar } from './plates.ts';

/**
 * Diameter in mm of a plate that weighs at least so many kg. 450 is the competition disc; the
 * smaller ones are what cast plates of their class measure, about (common practice).
 */
const DIAMETERS: readonly (readonly [fromKg: number, mm: number])[] = [
  [17, 450],
  [13, 400],
  [8, 325],
  [4, 230],
  [2, 190],
  [1, 160],
  [0, 110],
];

const LARGEST = 450;

/** Columns of the shaft at the left and of the sleeve that is left over at the right. */
const SHAFT = '═══';
const SLEEVE = '══';

/** Rows from the bar's axis to the rim of the largest plate: more where there is room for it. */
const rimRows = (width: number): number => (width >= 60 ? 4 : 3);

/** Neighbouring plates drawn as one. */
interface Slab {
  readonly label: string;
  readonly rows: number;
}

/**
 * One end of the loaded bar seen from the front: shaft, plates from the inside out with what is
 * stamped on them, and the end of the sleeve. Heights follow the plates' diameters. Equal plates
 * are drawn as one where they would not fit in `width`; no lines where even that is too wide.
 */
export function platePicture({ side }: Pick<LoadedBar, 'side'>, width: number): string[] {
  const apart = slabsOf(
    side.map((plate) => [plate]),
    width,
  );
  const slabs = widthOf(apart) <= width ? apart : slabsOf(alike(side), width);
  if (widthOf(slabs) > width) return [];
  const most = Math.max(0, ...slabs.map(({ rows }) => rows));
  return Array.from({ length: 2 * most + 1 }, (_, row) => lineOf(slabs, row - most).trimEnd());
}

/** Diameter in mm that a plate of this mass is drawn with. */
export const drawnDiameter = (mass: Mass): number =>
  DIAMETERS.find(([from]) => mass >= kilograms(from))?.[1] ?? 0;

function slabsOf(groups: readonly (readonly PlateKind[])[], width: number): Slab[] {
  const isMixed = new Set(groups.map(([plate]) => plate?.stamped.unit)).size > 1;
  return groups.flatMap((plates) => {
    const [plate] = plates;
    if (!plate) return [];
    const stamp = isMixed
      ? quantityText(plate.stamped).replace(' ', '')
      : String(plate.stamped.amount);
    const share = drawnDiameter(massOf(plateQuantity(plate))) / LARGEST;
    return {
      label: plates.length > 1 ? `${plates.length}×${stamp}` : stamp,
      rows: Math.max(1, Math.round(rimRows(width) * share)),
    };
  });
}

function alike(side: readonly PlateKind[]): PlateKind[][] {
  const groups: PlateKind[][] = [];
  for (const plate of side) {
    const last = groups.at(-1);
    if (last?.[0] === plate) last.push(plate);
    else groups.push([plate]);
  }
  return groups;
}

/** Neighbours share the edge between them. */
function widthOf(slabs: readonly Slab[]): number {
  const plates = slabs.reduce((sum, { label }) => sum + label.length + 1, 0);
  return SHAFT.length + SLEEVE.length + (slabs.length > 0 ? plates + 1 : 0);
}

/** The line `row` rows under the bar's axis (negative: above). Plates never grow outwards. */
function lineOf(slabs: readonly Slab[], row: number): string {
  const onAxis = row === 0;
  let line = onAxis ? SHAFT : ' '.repeat(SHAFT.length);
  for (const [at, slab] of slabs.entries()) {
    const inner = slabs[at - 1];
    line += edge(inner?.rows ?? 0, slab.rows, row) + face(slab, row);
  }
  return line + edge(slabs.at(-1)?.rows ?? 0, 0, row) + (onAxis ? SLEEVE : '');
}

function face({ label, rows }: Slab, row: number): string {
  if (row === 0) return label;
  if (Math.abs(row) > rows) return ' '.repeat(label.length);
  return (Math.abs(row) === rows ? '─' : ' ').repeat(label.length);
}

/** The edge between a plate of `inner` rows and one of `outer` rows further out; 0 is no plate. */
function edge(inner: number, outer: number, row: number): string {
  const most = Math.max(inner, outer);
  const far = Math.abs(row);
  if (most === 0) return '';
  if (far > most) return ' ';
  if (far < most) return far === Math.min(inner, outer) && far > 0 ? '├' : '│';
  const above = row < 0;
  if (inner === outer) return above ? '┬' : '┴';
  if (inner > outer) return above ? '┐' : '┘';
  return above ? '┌' : '└';
}

export type DiscColour = 'red' | 'blue' | 'yellow' | 'green' | 'white';

/** IWF Technical and Competition Rules: colours of the discs, by kg. */
const COLOURS: Readonly<Record<string, DiscColour>> = {
  '25': 'red',
  '20': 'blue',
  '15': 'yellow',
  '10': 'green',
  '5': 'white',
  '2.5': 'red',
  '2': 'blue',
  '1.5': 'yellow',
  '1': 'green',
  '0.5': 'white',
};

/** Colour of a disc in competition, by its stamp in kg; null where the rules have no such disc. */
export const discColour = ({ amount, unit }: Quantity): DiscColour | null =>
  unit === 'kg' ? (COLOURS[amount] ?? null) : null;
