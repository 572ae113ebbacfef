import { presentLoad } from '../../session/aim.ts';
import { massNumber, massOf, readQuantity } from '../../training/mass.ts';
import type { Bench } from '../../workbench/bench.ts';
import { blockDigits } from '../digits.ts';
import { BLANK, type Line, line, paragraph } from '../line.ts';
import type { Model, Screen } from '../ui-state.ts';
import { loadText } from '../words.ts';

/** Asks for the load of an exercise. */
export function loadLines(
  { session, size }: Model,
  { exercise, typed, purpose }: Extract<Screen, { kind: 'load' }>,
  bench: Bench,
  columns: number,
): Line[] {
  const prescribed = session?.exercises[exercise]?.prescribed;
  if (!session || !prescribed) return [];
  const { unit } = session.prescription;
  const quantity = readQuantity(typed, unit);
  const near = quantity && bench.nearestLoads(prescribed, massOf(quantity));
  const made = near?.exact !== null && near ? bench.madeUp(prescribed, near.exact) : null;
  const others = [near?.below, near?.above].filter((one) => one !== null && one !== undefined);
  const digits = blockDigits(typed, columns, size.rows >= 24 ? 7 : 5) ?? [typed];
  const state = session.exercises[exercise];
  const present = state ? presentLoad(state) : null;
  const now = present === null ? '' : loadText(present, prescribed, unit);
  return [
    line(prescribed.name, 'strong'),
    ...paragraph(QUESTIONS[purpose](prescribed.range[1] + 2, prescribed.counts, now), columns),
    BLANK,
    ...digits.map((row) => line(row)),
    ...(typed === '' ? [line('_', 'strong')] : []),
    line(`${unit} ${BASIS_WORDS[prescribed.basis]}`, 'strong'),
    BLANK,
    ...(made ? paragraph(made.words, columns) : []),
    ...(quantity && near?.exact === null
      ? paragraph(
          others.length > 0
            ? `Your gear makes ${others.map((one) => massNumber(one, unit)).join(' or ')} ${unit}.`
            : 'Your gear makes no load near it.',
          columns,
        )
      : []),
  ];
}

const QUESTIONS = {
  'first-session': (count: number, counts: string) =>
    `First time: choose a load that you could do for ${count} ${counts}.`,
  change: (_count: number, _counts: string, now: string) =>
    now ? `Now ${now}. Which load from here on?` : 'Which load from here on?',
} as const;

const BASIS_WORDS = {
  total: 'on the bar in all',
  hand: 'in each hand',
  stack: 'on the stack',
  added: 'beside body weight; minus is assistance',
  load: '',
} as const;
