import { Document, isMap, isScalar, type YAMLMap } from 'yaml';
import type { Pace } from './draft-limits.ts';
import type { DayPlans } from './room-in-week.ts';
import type { Wishes } from './wishes.ts';
import { writtenExercise, writtenRest } from './written-exercise.ts';

const STRAIGHT = ` Straight sets: stop each while 1 or 2 more reps could be done. Once every set reaches the
 top of the range, the load goes up.`;

const CLUSTER = ` A cluster: one set of 12 to 15, then mini-sets of the same load after 10 to 15 seconds each,
 until a mini-set has fewer reps than the first or the most sets are done.`;

/** A new program file, with a comment where something is met for the first time. */
export function writeDraft(
  plan: DayPlans,
  pace: Pace,
  wishes: Wishes,
  said: readonly string[],
): string {
  const document = new Document({
    name: wishes.name,
    unit: wishes.unit,
    aim: wishes.aim,
    days_per_week: wishes.days,
    rest: writtenRest(pace.between),
    days: plan.map((day, at) => ({
      name: dayName(at),
      exercises: day.map((exercise) => writtenExercise(exercise, wishes.unit, wishes.gear.unit)),
    })),
  });
  document.commentBefore = [
    ' yaml-language-server: $schema=./program.schema.json',
    '',
    ...said.map((text) => ` ${text}`),
    '',
    ' Change what you like: holdfast check says what the changes come to.',
  ].join('\n');
  const seen = new Set<string>();
  for (const [at, day] of plan.entries()) {
    const node = document.getIn(['days', at], true);
    if (isMap(node) && at > 0) node.spaceBefore = true;
    for (const [index, exercise] of day.entries()) {
      const written = document.getIn(['days', at, 'exercises', index], true);
      if (!isMap(written)) continue;
      if (index > 0) written.spaceBefore = true;
      inOneLine(written);
      const comment = COMMENTS[exercise.style](exercise.lift.kind);
      if (comment && !seen.has(comment)) written.commentBefore = comment;
      if (comment) seen.add(comment);
    }
  }
  comment(document, 'unit', ` every bare number that is a load is in ${wishes.unit}`);
  comment(document, 'rest', ' between the last set of an exercise and the first of the next');
  spaceBeforeKey(document, 'days');
  return document.toString({ lineWidth: 0 });
}

const COMMENTS = {
  straight: (kind: string) => (kind === 'compound' ? STRAIGHT : null),
  cluster: () => CLUSTER,
} as const;

export const dayName = (at: number): string => String.fromCharCode(65 + at);

export function inOneLine(exercise: YAMLMap): void {
  const cluster = exercise.get('cluster', true);
  if (isMap(cluster)) cluster.flow = true;
}

function comment(document: Document, key: string, text: string): void {
  const node = document.get(key, true);
  if (isScalar(node)) node.comment = text;
}

function spaceBeforeKey(document: Document, key: string): void {
  if (!isMap(document.contents)) return;
  const pair = document.contents.items.find(
    (item) => String((item.key as { value?: unknown }).value) === key,
  );
  const node = pair?.key as { spaceBefore?: boolean } | undefined;
  if (node) node.spaceBefore = true;
}

/** How far apart the days lie. Common practice. */
export const SPACING: Readonly<Record<Wishes['days'], string>> = {
  2: 'with two or three days of rest between them (Monday and Thursday, for example)',
  3: 'with a day of rest between them (Monday, Wednesday and Friday, for example)',
  4: 'at most two of them running (Monday, Tuesday, Thursday and Friday, for example)',
};
