/** @jsxImportSource preact */
import { tickStep, ticks } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { ComponentChildren } from 'preact';
import type { Tick } from '../date-ticks.ts';

export interface DrawingSize {
  readonly width: number;
  readonly height: number;
}

/** Plots are drawn at phone size and scale up, so that their labels stay readable on a phone. */
export const WIDE_PLOT: DrawingSize = { width: 420, height: 266 };
export const SMALL_PLOT: DrawingSize = { width: 300, height: 176 };

const MARGIN = { top: 24, right: 14, bottom: 36, left: 40 } as const;

export interface Scales {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
}

/** Scales from data to the drawing, inside the margins; `free` is kept clear at the right. */
export function scalesFor(
  size: DrawingSize,
  xEnds: readonly [number, number],
  yEnds: readonly [number, number],
  free = 0,
): Scales {
  return {
    x: scaleLinear(xEnds, [MARGIN.left, size.width - MARGIN.right - free]),
    y: scaleLinear(yEnds, [size.height - MARGIN.bottom, MARGIN.top]),
  };
}

/** The ends of some values with a little room; never of no length. */
export function endsOf(values: readonly number[], room = 0.06): readonly [number, number] {
  const low = values.reduce((a, b) => Math.min(a, b), Infinity);
  const high = values.reduce((a, b) => Math.max(a, b), -Infinity);
  if (!Number.isFinite(low)) return [0, 1];
  const more = high - low > 1e-9 ? (high - low) * room : Math.max(1, Math.abs(low) * 0.02);
  return [low - more, high + more];
}

/** Round values for an axis, at most about `count`, with as many digits as their step needs. */
export function roundTicks([from, to]: readonly [number, number], count: number): Tick[] {
  const digits = Math.max(0, -Math.floor(Math.log10(tickStep(from, to, count)) + 1e-9));
  return ticks(from, to, count).map((at) => ({ at, label: at.toFixed(digits) }));
}

export interface Axes {
  readonly x: string;
  readonly y: string;
}

export interface FrameProps {
  readonly size: DrawingSize;
  readonly scales: Scales;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  /** What each axis counts, with its unit. */
  readonly axes: Axes;
  /** What the drawing shows, in a sentence, for those who do not see it. */
  readonly says: string;
  readonly children: ComponentChildren;
}

/** The drawing with its axes: quiet lines across, labels left and below. */
export function PlotFrame({ size, scales, xTicks, yTicks, axes, says, children }: FrameProps) {
  const floor = size.height - MARGIN.bottom;
  return (
    <svg role='img' aria-label={says} viewBox={`0 0 ${size.width} ${size.height}`}>
      {yTicks.map(({ at, label }) => (
        <g key={`y${at}`}>
          <line
            class='across'
            x1={MARGIN.left}
            x2={size.width - MARGIN.right}
            y1={px(scales.y(at))}
            y2={px(scales.y(at))}
          />
          <text class='label' x={MARGIN.left - 6} y={px(scales.y(at) + 4)} text-anchor='end'>
            {label}
          </text>
        </g>
      ))}
      <line class='floor' x1={MARGIN.left} x2={size.width - MARGIN.right} y1={floor} y2={floor} />
      {xTicks.map(({ at, label }) => (
        <text
          key={`x${at}`}
          class='label'
          x={px(scales.x(at))}
          y={floor + 16}
          text-anchor={anchorAt(scales.x(at), size)}
        >
          {label}
        </text>
      ))}
      <text class='label' x={0} y={12}>
        {axes.y}
      </text>
      <text class='label' x={size.width - MARGIN.right} y={size.height - 5} text-anchor='end'>
        {axes.x}
      </text>
      {children}
    </svg>
  );
}

/** Labels near an edge grow inwards. */
function anchorAt(x: number, { width }: DrawingSize): 'start' | 'middle' | 'end' {
  if (x < MARGIN.left + 14) return 'start';
  return x > width - MARGIN.right - 14 ? 'end' : 'middle';
}

/** Drawing coordinates need no more than a tenth. */
export const px = (value: number): number => Math.round(value * 10) / 10;
