import { isMap, isSeq, type Node, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import { DEFAULTS } from '../defaults.ts';
import type { Exercise } from '../program.ts';
import type { DayPlans } from './room-in-week.ts';
import type { Before, Wishes } from './wishes.ts';
import { dayName, inOneLine, SPACING } from './write-draft.ts';
import { writtenExercise, writtenMass } from './written-exercise.ts';

/**
 * The program before, with the days of the plan: exercises that stay keep everything that was
 * written at them, comments too, but for the sets; those that go take their comments with them.
 * Laid out over another number of days, the days are called A, B, and so on, and the head says so
 * above the words that were there.
 */
export function redraft(plan: DayPlans, { text, program }: Before, wishes: Wishes): string {
  const document = parseDocument(text, { version: '1.2', stringKeys: true });
  const days = document.get('days', true);
  if (!isSeq(days)) return text;
  const olds = (days as YAMLSeq<Node>).items.filter((day) => isMap(day));
  const spare = olds.map(exercisesOf);
  const isLaidAnew = plan.length !== program.days.length;
  const nodes = plan.map((day, at) => {
    const items = day.map((exercise): Node => {
      const kept = taken(spare, at, exercise);
      if (kept) return changed(kept, exercise, wishes);
      const added = document.createNode(
        writtenExercise(exercise, wishes.unit, wishes.gear.unit),
      ) as YAMLMap;
      inOneLine(added);
      return added;
    });
    items.forEach((item, index) => {
      item.spaceBefore = index > 0;
    });
    const old = olds[at];
    const node = old ?? (document.createNode({ name: dayName(at), exercises: [] }) as YAMLMap);
    const exercises = node.get('exercises', true);
    if (isSeq(exercises)) (exercises as YAMLSeq<Node>).items = items;
    node.spaceBefore = at > 0;
    if (isLaidAnew) node.set('name', dayName(at));
    return node;
  });
  (days as YAMLSeq<Node>).items = nodes;
  document.set('days_per_week', wishes.days);
  if (wishes.name !== program.name) document.set('name', wishes.name);
  if (isLaidAnew) {
    const head = ` Laid out anew over ${wishes.days} days, ${SPACING[wishes.days]}.\n The words below are of the program before.`;
    const [, schema = '', rest = ''] = SCHEMA_FIRST.exec(document.commentBefore ?? '') ?? [];
    document.commentBefore = `${schema}${head}\n${rest.replace(/^\n+/, '')}`.trimEnd();
  }
  if (document.has('aim') || wishes.aim !== 'cut') document.set('aim', wishes.aim);
  return likeBefore(text, document.toString({ lineWidth: 0 }));
}

/** Editors look for the schema in the first line. */
const SCHEMA_FIRST = /^( yaml-language-server:.*\n)?\n*([\s\S]*)$/;

/** The exercises of a day; a comment above the first is parsed as one of the list. */
function exercisesOf(day: YAMLMap): YAMLMap[] {
  const exercises = day.get('exercises', true);
  if (!isSeq(exercises)) return [];
  const [first] = (exercises as YAMLSeq<Node>).items;
  if (first && exercises.commentBefore) {
    first.commentBefore = exercises.commentBefore;
    exercises.commentBefore = null;
  }
  return (exercises as YAMLSeq<Node>).items.filter((item) => isMap(item));
}

/** The exercise of that lift and style, of the same day where there is one, else of any. */
function taken(spare: YAMLMap[][], at: number, { lift, style }: Exercise): YAMLMap | null {
  for (const from of [spare[at] ?? [], ...spare]) {
    const index = from.findIndex(
      (node) => node.get('lift') === lift.key && node.has('cluster') === (style === 'cluster'),
    );
    if (index >= 0) return from.splice(index, 1)[0] ?? null;
  }
  return null;
}

function changed(node: YAMLMap, exercise: Exercise, { unit, gear, from }: Wishes): YAMLMap {
  const cluster = node.get('cluster', true);
  if (exercise.style === 'straight') {
    if (node.get('sets') !== exercise.sets) node.set('sets', exercise.sets);
  } else if (isMap(cluster)) {
    const before = cluster.get('most_sets') ?? DEFAULTS.mostSets;
    if (before !== exercise.mostSets) cluster.set('most_sets', exercise.mostSets);
  }
  if (exercise.start !== null && !isStartBefore(exercise, from)) {
    node.set('start', writtenMass(exercise.start, unit, gear.unit));
  }
  return node;
}

const isStartBefore = ({ lift, start }: Exercise, from: Wishes['from']): boolean =>
  from?.program.days
    .flatMap(({ exercises }) => exercises)
    .some((before) => before.lift.key === lift.key && before.start === start) ?? false;
/**
 * A YAML text written by a program, with the lines that it did not change as they were: comments
 * aligned by spaces, line ends and a byte order mark are lost in writing and come back here.
 */
function likeBefore(before: string, written: string): string {
  const ends = before.includes('\r\n') ? '\r\n' : '\n';
  const originals = new Map<string, string[]>();
  for (const line of before.replace(/^\ufeff/, '').split(/\r?\n/)) {
    const lines = originals.get(collapsed(line));
    if (lines) lines.push(line);
    else originals.set(collapsed(line), [line]);
  }
  const lines = written.split('\n').map((line) => {
    const original = originals.get(collapsed(line));
    // Of lines that read the same the first is the first, and the last stays for any more.
    const found = original && original.length > 1 ? original.shift() : original?.[0];
    return found ?? line.replace(/^\s+$/, '');
  });
  return `${before.startsWith('\ufeff') ? '\ufeff' : ''}${lines.join(ends)}`;
}

/** A line without what the width of spaces before a comment and at the end adds to it. */
const collapsed = (line: string): string => line.replace(/\s+#/, ' #').trimEnd();
