/** @jsxImportSource preact */
import { area, line } from 'd3-shape';
import type { Tick } from '../date-ticks.ts';
import type { PlotBand, Point } from '../plot.ts';
import {
  type Axes,
  type DrawingSize,
  endsOf,
  PlotFrame,
  px,
  roundTicks,
  scalesFor,
} from './frame.tsx';

export interface LinePlotProps {
  readonly size: DrawingSize;
  readonly says: string;
  readonly axes: Axes;
  /** Single readings. */
  readonly dots: readonly Point[];
  /** Joined by a line, which is left open where points lie further apart than `gap`. */
  readonly line: readonly Point[];
  readonly gap?: number;
  readonly bands: readonly PlotBand[];
  /** A value of y that the eye should compare with. */
  readonly mark?: number;
  /** Values that the x axis must hold. */
  readonly xHolds?: readonly number[];
  /** Values that the y axis must hold, so that noise does not fill the picture. */
  readonly yHolds?: readonly number[];
  readonly xTicks: (from: number, to: number, most: number) => readonly Tick[];
  /** Stands at the last point of the line. */
  readonly lastLabel?: string;
}

/** Width kept free for the label, to the right of all lines. */
const LABEL = 36;

/** Readings, their line, and the range they should lie in. */
export function LinePlot(props: LinePlotProps) {
  const { size, dots, line: joined, bands, mark, lastLabel } = props;
  const points = [...dots, ...joined];
  const edges = bands.flatMap((band) => band.edges);
  const xs = [...points, ...edges].map(([x]) => x);
  const xEnds = xEndsOf([...xs, ...(props.xHolds ?? [])]);
  const yEnds = endsOf([
    ...points.map(([, y]) => y),
    ...edges.flatMap(([, low, high]) => [low, high]),
    ...(mark === undefined ? [] : [mark]),
    ...(props.yHolds ?? []),
  ]);
  const scales = scalesFor(size, xEnds, yEnds, lastLabel ? LABEL : 0);
  const yTicks = roundTicks(yEnds, size.height > 200 ? 5 : 3);
  const most = Math.max(2, Math.floor(size.width / 75));
  const last = joined.at(-1);
  return (
    <PlotFrame
      size={size}
      scales={scales}
      says={props.says}
      axes={props.axes}
      xTicks={props.xTicks(...xEnds, most)}
      yTicks={yTicks}
    >
      {bands.map((band) => (
        <path key={band.edges.join()} class='band' d={bandPath(band, scales) ?? ''} />
      ))}
      {mark === undefined ? null : (
        <line
          class='mark'
          x1={px(scales.x(xEnds[0]))}
          x2={px(scales.x(xEnds[1]))}
          y1={px(scales.y(mark))}
          y2={px(scales.y(mark))}
        />
      )}
      {dots.map(([x, y]) => (
        <circle key={`${x} ${y}`} class='dot' cx={px(scales.x(x))} cy={px(scales.y(y))} r={2} />
      ))}
      {partsOf(joined, props.gap ?? Infinity).map((part) => (
        <path key={part[0]?.[0]} class='line' d={linePath(part, scales) ?? ''} />
      ))}
      {last ? (
        <circle class='last' cx={px(scales.x(last[0]))} cy={px(scales.y(last[1]))} r={3.5} />
      ) : null}
      {last && lastLabel ? (
        <text class='value' x={px(scales.x(last[0]) + 8)} y={px(scales.y(last[1]) + 4.5)}>
          {lastLabel}
        </text>
      ) : null}
    </PlotFrame>
  );
}

/** Of one day alone the days around it: a share of its number would be years. */
function xEndsOf(xs: readonly number[]): readonly [number, number] {
  const [first] = xs;
  const isOne = first !== undefined && xs.every((x) => x === first);
  return isOne ? [first - AROUND_ONE, first + AROUND_ONE] : endsOf(xs, 0.01);
}

const AROUND_ONE = 3;

/** The points in runs that are joined. */
function partsOf(points: readonly Point[], gap: number): Point[][] {
  const parts: Point[][] = [];
  for (const point of points) {
    const part = parts.at(-1);
    const last = part?.at(-1);
    if (part && last && point[0] - last[0] <= gap) part.push(point);
    else parts.push([point]);
  }
  return parts;
}

type Both = ReturnType<typeof scalesFor>;

const linePath = (points: readonly Point[], { x, y }: Both): string | null =>
  line<Point>()
    .x((point) => px(x(point[0])))
    .y((point) => px(y(point[1])))(points);

const bandPath = ({ edges }: PlotBand, { x, y }: Both): string | null =>
  area<PlotBand['edges'][number]>()
    .x(([at]) => px(x(at)))
    .y0(([, low]) => px(y(low)))
    .y1(([, , high]) => px(y(high)))(edges);
