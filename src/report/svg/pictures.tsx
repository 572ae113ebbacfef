/** @jsxImportSource preact */
import { dateTicks } from '../date-ticks.ts';
import { DAYS_JOINED } from '../history-text.ts';
import type {
  BodyPicture,
  KeptPicture,
  LiftPicture,
  MusclePicture,
  NumbersTable,
  WaistPicture,
} from '../page-view.ts';
import type { Point } from '../plot.ts';
import { roundTicks, SMALL_PLOT, WIDE_PLOT } from './frame.tsx';
import { LinePlot } from './line-plot.tsx';
import { WeekBars } from './week-bars.tsx';

/** Body weight: readings, trend and the range it should stay in. */
export function Body({ of, unit }: { readonly of: BodyPicture; readonly unit: string }) {
  const last = of.trend.at(-1);
  return (
    <figure class='wide'>
      <figcaption>
        <h3>Body weight, {unit}</h3>
        <span>dots: readings · line: trend{of.band ? ` · shaded: ${of.bandSays}` : ''}</span>
      </figcaption>
      <LinePlot
        size={WIDE_PLOT}
        says={`Body weight in ${unit}, ${fromTo(of.trend)}. The numbers follow.`}
        axes={{ x: 'day', y: unit }}
        dots={of.readings}
        line={of.trend}
        gap={DAYS_JOINED}
        bands={of.band ? [of.band] : []}
        xTicks={dateTicks}
        {...(last ? { lastLabel: last[1].toFixed(1) } : {})}
      />
      <Numbers of={of.table} about='body weight by week' />
    </figure>
  );
}

/** The waist: water moves the scales more than the tape. */
export function Waist({ of }: { readonly of: WaistPicture }) {
  const last = of.points.at(-1);
  return (
    <figure class='wide'>
      <figcaption>
        <h3>Waist, {of.unit}</h3>
        <span>dots: readings</span>
      </figcaption>
      <LinePlot
        size={WIDE_PLOT}
        says={`Waist in ${of.unit}, ${fromTo(of.points)}. The numbers follow.`}
        axes={{ x: 'day', y: of.unit }}
        dots={of.points}
        line={of.points}
        gap={DAYS_JOINED}
        bands={[]}
        xTicks={dateTicks}
        {...(last ? { lastLabel: last[1].toFixed(1) } : {})}
      />
      <Numbers of={of.table} about='waist by day' />
    </figure>
  );
}

/** Strength kept against weight lost. */
export function KeptFigure({ of }: { readonly of: KeptPicture }) {
  const last = of.points.at(-1);
  return (
    <figure class='wide'>
      <figcaption>
        <h3>Strength kept, % · weight lost, %</h3>
        <span>a dot a week · dashed: all of the strength at the start</span>
      </figcaption>
      <LinePlot
        size={WIDE_PLOT}
        says={`Strength kept in percent against body weight lost in percent, ${fromTo(of.points)}. The numbers follow.`}
        axes={{ x: 'body weight since the start, %', y: 'strength kept, %' }}
        dots={of.points}
        line={[...of.points].sort((a, b) => a[0] - b[0])}
        bands={[]}
        mark={100}
        xHolds={[0]}
        yHolds={[94, 101]}
        xTicks={(from, to, most) =>
          roundTicks([from, to], most).map(({ at, label }) => ({
            at,
            label: `−${label}`.replace('−-', '+').replace('−0', '0'),
          }))
        }
        {...(last ? { lastLabel: `${last[1].toFixed(0)} %` } : {})}
      />
      <Numbers of={of.table} about='kept and lost by week' />
    </figure>
  );
}

/** One lift: e1RM over time. */
export function LiftCard({ of, unit }: { readonly of: LiftPicture; readonly unit: string }) {
  const { line, gap, bands } = of.strength;
  const last = line.at(-1) ?? of.points.at(-1);
  return (
    <figure>
      <figcaption>
        <h3>{of.name}</h3>
        <span>{of.note}</span>
      </figcaption>
      <LinePlot
        size={SMALL_PLOT}
        says={`${of.name}: estimated one-repetition maximum in ${unit}, ${fromTo(of.points)}. The numbers follow.`}
        axes={{ x: 'day', y: `e1RM, ${unit}` }}
        dots={of.points}
        line={line}
        gap={gap}
        bands={bands}
        yHolds={around(of.points)}
        xTicks={dateTicks}
        {...(last ? { lastLabel: last[1].toFixed(1) } : {})}
      />
      <Numbers of={of.table} about={`${of.name} by session`} />
    </figure>
  );
}

/** Hard sets a week, a small picture a muscle, all to one scale, and one table for all. */
export function Muscles({ of }: { readonly of: MusclePicture }) {
  const most = Math.ceil(
    of.muscles.flatMap(({ sets }) => sets).reduce((a, b) => Math.max(a, b), of.band[1] + 2),
  );
  return (
    <>
      <div class='pictures'>
        {of.muscles.map(({ name, sets }) => (
          <figure key={name}>
            <figcaption>
              <h3>{name}</h3>
              <span>this week {sets.at(-1) ?? 0}</span>
            </figcaption>
            <WeekBars
              size={SMALL_PLOT}
              says={`Hard sets a week for ${name}: ${sets.join(', ')}.`}
              weeks={of.weeks}
              values={sets}
              band={of.band}
              most={most}
            />
          </figure>
        ))}
      </div>
      <Numbers of={of.table} about='hard sets of every muscle by week' />
    </>
  );
}

/** Six percent to both sides of the first value: a session's noise is one or two. */
const around = ([first]: readonly Point[]): number[] =>
  first ? [first[1] * 0.94, first[1] * 1.06] : [];

function fromTo(points: readonly Point[]): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return 'no values yet';
  return `from ${first[1].toFixed(1)} to ${last[1].toFixed(1)}`;
}

/** The numbers of a picture, folded away until they are asked for. */
function Numbers({ of, about }: { readonly of: NumbersTable; readonly about: string }) {
  const [first, ...others] = of.headings;
  return (
    <details>
      <summary>Numbers: {about}</summary>
      <section class='scroll' tabindex={0} aria-label={about}>
        <table>
          <caption>{about}</caption>
          <thead>
            <tr>
              <th scope='col'>{first}</th>
              {others.map((heading) => (
                <th key={heading} scope='col'>
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {of.rows.map(([name, ...cells]) => (
              <tr key={[name, ...cells].join('|')}>
                <th scope='row'>{name}</th>
                {cells.map((cell, at) => (
                  <td key={of.headings[at + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
