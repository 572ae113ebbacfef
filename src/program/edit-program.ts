import {
  type Document,
  isMap,
  isSeq,
  type Node,
  parseDocument,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Problem } from '../text/problem.ts';
import { fileProblemText } from './file-problem.ts';
import { likeBefore } from './like-before.ts';
import { readProgram } from './read-program.ts';

/** An exercise by its day and its place in that day, both counted from 0 in the order of the file. */
export interface ExerciseAt {
  readonly day: number;
  readonly exercise: number;
}

/** Keys of an exercise as they are written in a file. */
export type NewExercise = Readonly<Record<string, unknown>> & { readonly lift: string };

/** The text with another number of sets; of a cluster, of the most sets. */
export const withSets = (text: string, at: ExerciseAt, sets: number): string | Problem =>
  edited(text, (document) => {
    const exercise = exerciseAt(document, at);
    const cluster = exercise.get('cluster', true);
    if (isMap(cluster)) cluster.set('most_sets', sets);
    else exercise.set('sets', sets);
  });

/** The text with a finding accepted, for one exercise or (null) for the whole program. */
export const withAccepted = (
  text: string,
  at: ExerciseAt | null,
  rule: string,
  reason: string,
): string | Problem =>
  edited(text, (document) => {
    if (at) exerciseAt(document, at).setIn(['accept', rule], reason);
    else document.setIn(['accept', rule], reason);
  });

/** The text with an exercise moved; `to` is where it stands afterwards. */
export const moveExercise = (text: string, from: ExerciseAt, to: ExerciseAt): string | Problem =>
  edited(text, (document) => {
    const moved = exerciseAt(document, from);
    take(exercisesOf(document, from.day), from.exercise);
    put(exercisesOf(document, to.day), to.exercise, moved);
  });

/** The text with an exercise more, at `at`; what stood there comes after it. */
export const addExercise = (text: string, at: ExerciseAt, added: NewExercise): string | Problem =>
  edited(text, (document) => {
    const exercise = document.createNode(added) as YAMLMap;
    const cluster = exercise.get('cluster', true);
    if (isMap(cluster)) cluster.flow = true;
    put(exercisesOf(document, at.day), at.exercise, exercise);
  });

/** The text with an exercise less, its own comments gone with it. */
export const removeExercise = (text: string, at: ExerciseAt): string | Problem =>
  edited(text, (document) => {
    exerciseAt(document, at);
    take(exercisesOf(document, at.day), at.exercise);
  });

/** There is no such day or exercise. */
class NotThere extends Error {}

/** Carries out an edit; what would not be a program afterwards is a problem, and nothing is changed. */
function edited(text: string, edit: (document: Document) => void): string | Problem {
  const before = readProgram(text, 'the program');
  if (!before.ok) return refusal(before.problems[0]);
  const document = parseDocument(text, { version: '1.2', stringKeys: true });
  try {
    edit(document);
  } catch (error) {
    if (!(error instanceof NotThere)) throw error;
    return { what: error.message, fix: 'Read the program again: it has changed.' };
  }
  const result = likeBefore(text, document.toString({ lineWidth: 0 }));
  const after = readProgram(result, 'the changed program');
  return after.ok ? result : refusal(after.problems[0]);
}

const refusal = (problem: Parameters<typeof fileProblemText>[0] | undefined): Problem => ({
  what: problem ? fileProblemText(problem) : 'The program cannot be read.',
});

function exercisesOf(document: Document, day: number): YAMLSeq<Node> {
  const found = document.getIn(['days', day, 'exercises'], true);
  if (!isSeq(found)) throw new NotThere(`There is no day ${day + 1}.`);
  const exercises = found as YAMLSeq<Node>;
  const [first] = exercises.items;
  // A comment above the first exercise is parsed as one of the list, and would stay behind.
  if (first && exercises.commentBefore) {
    first.commentBefore = exercises.commentBefore;
    exercises.commentBefore = null;
  }
  return exercises;
}

function exerciseAt(document: Document, { day, exercise }: ExerciseAt): YAMLMap {
  const found = exercisesOf(document, day).items[exercise];
  if (!isMap(found)) throw new NotThere(`Day ${day + 1} has no exercise ${exercise + 1}.`);
  return found;
}

function take(exercises: YAMLSeq<Node>, index: number): void {
  exercises.items.splice(index, 1);
  evenly(exercises);
}

function put(exercises: YAMLSeq<Node>, index: number, exercise: Node): void {
  if (index < 0 || index > exercises.items.length) {
    throw new NotThere(`There is no place ${index + 1} in that day.`);
  }
  exercises.items.splice(index, 0, exercise);
  evenly(exercises);
}

/** Blank lines between exercises where there were some, and none above the first. */
function evenly({ items }: YAMLSeq<Node>): void {
  const isSpaced = items.some(({ spaceBefore }) => spaceBefore);
  for (const [index, item] of items.entries()) item.spaceBefore = isSpaced && index > 0;
}
