import { closingOf } from '../cut/closing.ts';
import { endOf } from '../cut/judge-way-out.ts';
import type { Review } from '../cut/review.ts';
import { wrapped } from '../text/columns.ts';
import { dayWords } from '../text/day-words.ts';
import { safeText } from '../text/safe-text.ts';
import { howMany } from '../text/words.ts';
import { massText, minus, type Unit } from '../training/mass.ts';
import { textTable } from './table.ts';

/** What a cut that ends, or ended, came to, and what was learned of the lifter; empty before its end. */
export function closingLines({ evidence, verdict }: Review, unit: Unit, width: number): string[] {
  const end = endOf(evidence);
  if (!end && verdict.headline.reason.rule !== 'goal-reached') return [];
  const closing = closingOf(evidence, end?.from);
  if (!closing) return [];
  const { from, until, weeks, body, sessions, planned, lifts } = closing;
  const percent = (share: number) => `${Math.round(share * 100)}`;
  const rows = lifts.map(({ kept, setsAWeek, went }) => [
    safeText(kept.name),
    `${percent(kept.share)} % (${percent(kept.low)}–${percent(kept.high)})`,
    setsAWeek.toFixed(1),
    went,
  ]);
  return [
    ...wrapped(
      `${howMany(weeks, 'week')} from ${dayWords(from)} to ${dayWords(until)}; ${sessions} of ${planned} sessions`,
      width,
    ),
    ...(body
      ? wrapped(
          `body weight ${massText(body.then, unit, 1)} → ${massText(body.now, unit, 1)}: ${lostWords(body, unit)}`,
          width,
        )
      : []),
    ...textTable(
      [
        { heading: 'lift', align: 'left' },
        { heading: 'kept', align: 'right' },
        { heading: 'sets a week', align: 'right', dropFirst: 1 },
        { heading: '', align: 'left' },
      ],
      rows,
      width,
    ),
  ];
}

function lostWords(
  { then, now }: NonNullable<ReturnType<typeof closingOf>>['body'] & object,
  unit: Unit,
): string {
  const share = ((1 - now / then) * 100).toFixed(1);
  return now > then
    ? `${massText(minus(now, then), unit, 1)} more`
    : `${massText(minus(then, now), unit, 1)} less, ${share} %`;
}
