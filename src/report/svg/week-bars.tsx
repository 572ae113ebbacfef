/** @jsxImportSource preact */
import { scaleBand } from 'd3-scale';
import { type DrawingSize, PlotFrame, px, scalesFor } from './frame.tsx';

export interface WeekBarsProps {
  readonly size: DrawingSize;
  readonly says: string;
  /** Labels of the weeks, oldest first. */
  readonly weeks: readonly string[];
  readonly values: readonly number[];
  readonly band: readonly [low: number, high: number];
  /** Top of the y axis: the same for plots that are compared. */
  readonly most: number;
}

/** One bar a week against the range it should end in. */
export function WeekBars({ size, says, weeks, values, band, most }: WeekBarsProps) {
  const scales = scalesFor(size, [0, 1], [0, most]);
  const [left, right] = scales.x.range() as [number, number];
  const [floor] = scales.y.range() as [number, number];
  const columns = scaleBand(
    weeks.map((_, at) => at),
    [left, right],
  ).padding(0.2);
  const ends = [0, weeks.length - 1].filter(
    (at, index, all) => at >= 0 && all.indexOf(at) === index,
  );
  return (
    <PlotFrame
      size={size}
      scales={scales}
      says={says}
      axes={{ x: 'week from', y: 'hard sets' }}
      yTicks={[0, ...band].map((at) => ({ at, label: String(at) }))}
      xTicks={ends.map((at) => ({
        at: scales.x.invert((columns(at) ?? left) + columns.bandwidth() / 2),
        label: weeks[at] ?? '',
      }))}
    >
      <rect
        class='band'
        x={left}
        width={right - left}
        y={px(scales.y(band[1]))}
        height={px(scales.y(band[0]) - scales.y(band[1]))}
      />
      {values.map((value, at) => (
        <rect
          key={weeks[at]}
          class='bar'
          x={px(columns(at) ?? left)}
          width={px(columns.bandwidth())}
          y={px(scales.y(Math.min(value, most)))}
          height={px(floor - scales.y(Math.min(value, most)))}
        />
      ))}
      {band.map((edge) => (
        <line
          key={edge}
          class='edge'
          x1={left}
          x2={right}
          y1={px(scales.y(edge))}
          y2={px(scales.y(edge))}
        />
      ))}
    </PlotFrame>
  );
}
