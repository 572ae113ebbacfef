import { tickStep, ticks } from 'd3-array';
import { columnsOf } from '../text/columns.ts';
import type { Tick } from './date-ticks.ts';

/** A measured value: x, usually a day number, and y. */
export type Point = readonly [x: number, y: number];

export interface PlotLine {
  readonly points: readonly Point[];
  readonly as: 'line' | 'dots';
  /** Points further apart than this in x are not joined; none: always joined. */
  readonly gap?: number;
}

/** A range of y that may change over x, joined by straight edges: `[x, low, high]` in order of x. */
export interface PlotBand {
  readonly edges: readonly (readonly [x: number, low: number, high: number])[];
}

export interface Plot {
  readonly lines: readonly PlotLine[];
  readonly bands: readonly PlotBand[];
  /** Ends of the x axis; without them the ends of the data. */
  readonly x?: Point;
  /** Values that the y axis must hold besides the data. */
  readonly yHolds?: readonly number[];
  /** Ticks of the x axis between two values, at most so many. */
  readonly xTicks: (from: number, to: number, most: number) => readonly Tick[];
}

export interface PlotSize {
  /** Columns of the whole plot, labels included. */
  readonly width: number;
  /** Rows of the whole plot: the axis and its labels take two. */
  readonly height: number;
  readonly glyphs: Glyphs;
}

const AXES = {
  braille: { side: '│', notch: '┤', corner: '└', floor: '─', tick: '┬', band: '░' },
  ascii: { side: '|', notch: '+', corner: '+', floor: '-', tick: '+', band: ':' },
} as const;

/** Columns a tick label wants on the x axis, its space included. */
const LABEL_ROOM = 10;

/**
 * A plot in lines of at most `width` columns, `height` of them. Lines and dots are drawn over the
 * bands. No lines where nothing can be read: no data, under 16 columns or under 5 rows.
 */
export function drawPlot(plot: Plot, { width, height, glyphs }: PlotSize): string[] {
  const rows = height - 2;
  const [xFrom, xTo] = xRange(plot);
  const values = yValues(plot, xFrom, xTo);
  if (values.length === 0 || rows < 3 || width < 16) return [];
  const [yFrom, yTo] = yRange(values);
  const marks = yTicks(yFrom, yTo, rows);
  const margin = Math.max(...marks.map(({ label }) => columnsOf(label)));
  const columns = width - margin - 1;
  if (columns < 8) return [];

  const grid = dotGrid(columns, rows, glyphs);
  const column = (x: number) => (xTo === xFrom ? 0.5 : (x - xFrom) / (xTo - xFrom));
  const row = (y: number) => (yTo - y) / (yTo - yFrom);
  const inside = ([x]: Point) => x >= xFrom && x <= xTo;
  for (const line of [...plot.lines].sort((a, b) => drawOrder(a) - drawOrder(b))) {
    let last: Point | null = null;
    for (const point of line.points.filter(inside)) {
      const joined = last !== null && point[0] - last[0] <= (line.gap ?? Infinity);
      if (line.as === 'line' && joined && last) {
        grid.line(column(last[0]), row(last[1]), column(point[0]), row(point[1]));
      } else {
        grid.dot(column(point[0]), row(point[1]), line.as);
      }
      last = point;
    }
  }

  const axis = AXES[glyphs];
  const labelOf = new Map(marks.map(({ at, label }) => [rowOf(row(at), rows), label]));
  const body = grid.cells.map((cells, r) => {
    const label = labelOf.get(r);
    const left = (label ?? '').padStart(margin) + (label === undefined ? axis.side : axis.notch);
    const drawn = cells.map((cell, c) => {
      if (cell !== ' ') return cell;
      const x = xFrom + ((c + 0.5) / columns) * (xTo - xFrom);
      const [high, low] = [0, 1].map((edge) => yTo - ((r + edge) / rows) * (yTo - yFrom));
      return plot.bands.some((band) => covers(band, x, low ?? 0, high ?? 0)) ? axis.band : ' ';
    });
    return (left + drawn.join('')).trimEnd();
  });
  const most = Math.max(2, Math.floor(columns / LABEL_ROOM));
  const wanted = plot.xTicks(xFrom, xTo, most);
  const placed = wanted.map(({ at, label }) => ({
    label,
    at: Math.min(columns - 1, Math.floor(column(at) * columns)),
  }));
  return [...body, ...xAxis(placed, margin, columns, axis)];
}

/** Dots first, so that a line stays readable over them. */
const drawOrder = ({ as }: PlotLine): number => (as === 'dots' ? 0 : 1);

const rowOf = (share: number, rows: number): number =>
  Math.min(rows - 1, Math.max(0, Math.floor(share * rows)));

function xRange(plot: Plot): Point {
  if (plot.x) return plot.x;
  const xs = plot.lines.flatMap(({ points }) => points.map(([x]) => x));
  return xs.length === 0 ? [0, 0] : [least(xs), greatest(xs)];
}

function yValues(plot: Plot, from: number, to: number): number[] {
  const drawn = plot.lines.flatMap(({ points }) =>
    points.filter(([x]) => x >= from && x <= to).map(([, y]) => y),
  );
  if (drawn.length === 0) return [];
  const edges = plot.bands.flatMap(({ edges }) =>
    edges.filter(([x]) => x >= from && x <= to).flatMap(([, low, high]) => [low, high]),
  );
  return [...drawn, ...edges, ...(plot.yHolds ?? [])].filter(Number.isFinite);
}

/** The data with a little room, so that the outermost dots do not sit on the frame. */
function yRange(values: readonly number[]): Point {
  const [low, high] = [least(values), greatest(values)];
  const flat = high - low < 1e-9 * Math.max(1, Math.abs(low), Math.abs(high));
  const room = flat ? Math.max(1, Math.abs(low) * 0.02) : (high - low) * 0.04;
  return [low - room, high + room];
}

const tickCount = (rows: number): number => Math.max(2, Math.floor(rows / 3));

function yTicks(from: number, to: number, rows: number): Tick[] {
  const step = tickStep(from, to, tickCount(rows));
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return ticks(from, to, tickCount(rows)).map((at) => ({ at, label: at.toFixed(digits) }));
}

/** Is the middle of a cell inside the band, or the middle of the band inside the cell? */
function covers({ edges }: PlotBand, x: number, low: number, high: number): boolean {
  for (let at = 1; at < edges.length; at += 1) {
    const [a, b] = [edges[at - 1], edges[at]];
    if (!a || !b || x < a[0] || x > b[0]) continue;
    const share = b[0] === a[0] ? 0 : (x - a[0]) / (b[0] - a[0]);
    const [from, to] = [a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])];
    const [cell, band] = [(low + high) / 2, (from + to) / 2];
    return (cell >= from && cell <= to) || (band >= low && band < high);
  }
  return false;
}

/** The floor of the plot and its labels; labels that would touch are left out. */
function xAxis(
  placed: readonly Tick[],
  margin: number,
  columns: number,
  axis: (typeof AXES)[Glyphs],
): string[] {
  const floor = Array.from({ length: columns }, () => axis.floor as string);
  let labels = '';
  for (const { at, label } of placed) {
    const long = columnsOf(label);
    const start = Math.max(0, Math.min(columns - long, at - Math.floor(long / 2)));
    if (long > columns || (labels !== '' && start <= columnsOf(labels))) continue;
    floor[at] = axis.tick;
    labels = labels.padEnd(start) + label;
  }
  const indent = ' '.repeat(margin);
  return [indent + axis.corner + floor.join(''), `${indent} ${labels}`.trimEnd()];
}

// Spreading a long history into Math.min would overflow the stack.
const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
const greatest = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));

/** Braille has 2 × 4 dots a cell; plain ASCII one mark a cell, for terminals without Unicode. */
export type Glyphs = 'braille' | 'ascii';

export interface DotGrid {
  /** Sets one dot; both arguments are shares of the width and height, from the top left, 0 to 1. */
  dot(x: number, y: number, as: 'line' | 'dots'): void;
  /** Joins two places by a straight line. */
  line(x0: number, y0: number, x1: number, y1: number): void;
  /** Rows of characters, a space where nothing was drawn. */
  readonly cells: readonly (readonly string[])[];
}

/** Dots of a braille cell by row and column (Unicode block U+2800, dots 1 to 8). */
const BRAILLE = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

const MARKS = { line: '*', dots: 'o' } as const;

/** An empty drawing of `columns` × `rows` characters. */
function dotGrid(columns: number, rows: number, glyphs: Glyphs): DotGrid {
  const [across, down] = glyphs === 'braille' ? [2, 4] : [1, 1];
  const cells = Array.from({ length: rows }, () => Array.from({ length: columns }, () => ' '));
  const place = (share: number, count: number) =>
    Math.min(count - 1, Math.max(0, Math.floor(share * count)));

  const set = (x: number, y: number, as: 'line' | 'dots') => {
    const [column, row] = [Math.floor(x / across), Math.floor(y / down)];
    const line = cells[row];
    if (!line) return;
    if (glyphs === 'ascii') {
      line[column] = MARKS[as];
      return;
    }
    const before = line[column] === ' ' ? 0 : (line[column]?.charCodeAt(0) ?? 0x2800) - 0x2800;
    const bit = BRAILLE[y % 4]?.[x % 2 === 0 ? 0 : 1] ?? 0;
    line[column] = String.fromCharCode(0x2800 + (before | bit));
  };

  return {
    cells,
    dot(x, y, as) {
      set(place(x, columns * across), place(y, rows * down), as);
    },
    line(x0, y0, x1, y1) {
      const from = [place(x0, columns * across), place(y0, rows * down)] as const;
      const to = [place(x1, columns * across), place(y1, rows * down)] as const;
      const steps = Math.max(Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1]), 1);
      for (let at = 0; at <= steps; at += 1) {
        const along = at / steps;
        const x = Math.round(from[0] + along * (to[0] - from[0]));
        const y = Math.round(from[1] + along * (to[1] - from[1]));
        set(x, y, 'line');
      }
    },
  };
}
