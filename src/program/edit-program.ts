import {
  Document,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Problem } from '../text/problem.ts';
import { type Cut, exerciseList, type Splice, spliced, withMostSets } from './exercise-list.ts';
import { fileProblemText } from './file-problem.ts';
import { readProgram } from './read-program.ts';

/** An exercise by its day and its place in that day, both counted from 0 in the order of the file. */
export interface ExerciseAt {
  readonly day: number;
  readonly exercise: number;
}

/** Keys of an exercise as they are written in a file. */
export type NewExercise = Readonly<Record<string, unknown>> & { readonly lift: string };

/** The exercises of a program as plain data, which an edit is held to. */
type Days = { exercises: Record<string, unknown>[] }[];

/** The text with another number of sets; of a cluster, of the most sets. */
export const withSets = (text: string, at: ExerciseAt, sets: number): string | Problem =>
  edited(text, (source, document) => {
    const exercise = exerciseAt(document, at);
    const cluster = exercise.get('cluster', true);
    const number = isMap(cluster) ? cluster.get('most_sets', true) : exercise.get('sets', true);
    const [from = 0, to = 0] = isScalar(number) ? (number.range ?? []) : [];
    return {
      splices:
        isMap(cluster) && !isScalar(number)
          ? withMostSets(source, cluster, sets)
          : [{ from, to, text: `${sets}` }],
      meant: (days) => {
        const each = days[at.day]?.exercises[at.exercise] ?? {};
        if (isMap(cluster)) each.cluster = { ...(each.cluster as object), most_sets: sets };
        else each.sets = sets;
      },
    };
  });

/** The text with an exercise moved; `to` is where it stands afterwards. */
export const moveExercise = (text: string, from: ExerciseAt, to: ExerciseAt): string | Problem =>
  edited(text, (source, document) => {
    exerciseAt(document, from);
    const isWithin = from.day === to.day;
    if (isWithin && from.exercise === to.exercise) return { splices: [], meant: () => {} };
    const cut = cutOut(source, document, from, isWithin);
    const target = exercisesOf(document, to.day);
    // In its own day the places behind the exercise are counted without it.
    const behind = isWithin && to.exercise > from.exercise ? to.exercise : to.exercise - 1;
    return {
      splices: [...cut.splices, ...put(source, target, behind, cut)],
      meant: (days) => {
        const moved = days[from.day]?.exercises.splice(from.exercise, 1) ?? [];
        days[to.day]?.exercises.splice(to.exercise, 0, ...moved);
      },
    };
  });

/** The text with an exercise more, at `at`; what stood there comes after it. */
export const addExercise = (text: string, at: ExerciseAt, added: NewExercise): string | Problem =>
  edited(text, (source, document) => {
    const target = exercisesOf(document, at.day);
    const written = exerciseList(source, target).added({
      dashed: asWritten(added, false),
      flow: asWritten(added, true),
    });
    return {
      splices: put(source, target, at.exercise - 1, written),
      meant: (days) => days[at.day]?.exercises.splice(at.exercise, 0, added),
    };
  });

/** Keys of the head of a program that can be written from outside an editor. */
export type HeadKey = GoalKey | 'days_per_week';

/** Those that say what a cut leads to. */
export type GoalKey = 'goal_weight' | 'goal_date' | 'rate';

/** A key that is new comes behind the first of these that is there, in a line of its own. */
const BEFORE_A_GOAL = ['rate', 'aim', 'unit', 'name'];

/** The text with a key of its head at another value, in a line of its own where it is new; null takes it out. */
export const withHead = (text: string, key: HeadKey, value: string | null): string | Problem =>
  edited(text, (source, document) => {
    const head = document.contents as unknown as YAMLMap;
    const found = head.items.find(({ key: each }) => isScalar(each) && each.value === key);
    const meant = (_days: Days, whole: Record<string, unknown>) => {
      if (value === null) delete whole[key];
      else whole[key] = parseDocument(value, { version: '1.2' }).toJS();
    };
    if (found) {
      const [from = 0, to = 0] = isNode(found.value) ? (found.value.range ?? []) : [];
      return value === null
        ? { splices: [{ ...lineOf(source, found.key as Node, to), text: '' }], meant }
        : { splices: [{ from, to, text: value }], meant };
    }
    if (value === null) return { splices: [], meant };
    if (head.flow) throw new NotPossible(WRITTEN_ODDLY);
    const behind = BEFORE_A_GOAL.flatMap(
      (name) => head.items.find(({ key: each }) => isScalar(each) && each.value === name) ?? [],
    )[0];
    const last = isNode(behind?.value) ? (behind.value.range?.[1] ?? 0) : 0;
    const { to } = lineOf(source, behind?.key as Node, last);
    const end = source.includes('\r\n') ? '\r\n' : '\n';
    return { splices: [{ from: to, to, text: `${key}: ${value}${end}` }], meant };
  });

/** The lines from a key to the end of what it holds. */
function lineOf(source: string, key: Node, last: number) {
  const [first = 0] = key.range ?? [];
  const end = source.indexOf('\n', Math.max(first, last - 1));
  return { from: source.lastIndexOf('\n', first) + 1, to: end < 0 ? source.length : end + 1 };
}

/** The text with an exercise less, the comment above it gone with it. */
export const removeExercise = (text: string, at: ExerciseAt): string | Problem =>
  edited(text, (source, document) => {
    exerciseAt(document, at);
    return {
      splices: cutOut(source, document, at).splices,
      meant: (days) => days[at.day]?.exercises.splice(at.exercise, 1),
    };
  });

/** Cannot be carried out on this text, for the reason in its problem. */
class NotPossible extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.what);
    this.problem = problem;
  }
}

const notThere = (what: string): NotPossible =>
  new NotPossible({ what, fix: 'Read the program again: it has changed.' });

interface Edit {
  readonly splices: readonly Splice[];
  /** Does to the plain data what the splices are meant to do to the text. */
  readonly meant: (days: Days, whole: Record<string, unknown>) => unknown;
}

/**
 * Carries out an edit on the text itself, so that every line that it does not mean stays as it was
 * to the byte. What would not be a program afterwards, or another one than was meant, is a problem,
 * and nothing is changed.
 */
function edited(
  text: string,
  edit: (source: string, document: Document) => Edit,
): string | Problem {
  const before = readProgram(text, 'the program');
  if (!before.ok) return refusal(before.problems[0]);
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  const hasEnd = text.endsWith('\n');
  const source = `${text.slice(mark.length)}${hasEnd ? '' : text.includes('\r\n') ? '\r\n' : '\n'}`;
  const document = parsed(source);
  try {
    const { splices, meant } = edit(source, document);
    if (splices.length === 0) return text;
    const whole = spliced(source, splices);
    const result = `${mark}${hasEnd ? whole : whole.replace(/\r?\n$/, '')}`;
    const after = readProgram(result, 'the changed program');
    if (!after.ok) return refusal(after.problems[0]);
    const wanted = document.toJS() as { days: Days };
    meant(wanted.days, wanted);
    return isSame(parsed(result.slice(mark.length)).toJS(), wanted) ? result : WRITTEN_ODDLY;
  } catch (error) {
    if (error instanceof NotPossible) return error.problem;
    throw error;
  }
}

const parsed = (text: string): Document.Parsed =>
  parseDocument(text, { version: '1.2', stringKeys: true, keepSourceTokens: true });

const WRITTEN_ODDLY: Problem = {
  what: 'The file is written in a way in which this would change more than it should.',
  fix: 'Change these lines in an editor; nothing was changed here.',
};

/** The same data, whatever the order of keys. */
const isSame = (one: unknown, other: unknown): boolean => ordered(one) === ordered(other);

const ordered = (value: unknown): string =>
  JSON.stringify(value, (_, each: unknown) =>
    each !== null && typeof each === 'object' && !Array.isArray(each)
      ? Object.fromEntries(Object.entries(each).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : each,
  );

const refusal = (problem: Parameters<typeof fileProblemText>[0] | undefined): Problem => ({
  what: problem ? fileProblemText(problem) : 'The program cannot be read.',
});

function asWritten(added: NewExercise, isFlow: boolean): string {
  const document = new Document(added);
  const exercise = document.contents as unknown as YAMLMap;
  const cluster = exercise.get('cluster', true);
  if (isMap(cluster)) cluster.flow = true;
  exercise.flow = isFlow;
  return document.toString({ lineWidth: 0 });
}

function exercisesOf(document: Document, day: number): YAMLSeq<Node> {
  const found = document.getIn(['days', day, 'exercises'], true);
  if (!isSeq(found)) throw notThere(`There is no day ${day + 1}.`);
  return found as YAMLSeq<Node>;
}

function exerciseAt(document: Document, { day, exercise }: ExerciseAt): YAMLMap {
  const found = exercisesOf(document, day).items[exercise];
  if (!isMap(found)) throw notThere(`Day ${day + 1} has no exercise ${exercise + 1}.`);
  return found;
}

function cutOut(source: string, document: Document, at: ExerciseAt, staysInDay = false): Cut {
  const list = exercisesOf(document, at.day);
  if (list.items.length === 1 && !staysInDay) {
    throw new NotPossible({ what: 'A day keeps at least one lift.' });
  }
  return exerciseList(source, list).cut(at.exercise);
}

/** Puts an exercise behind that of index `after`; -1 is before the first. */
function put(source: string, target: YAMLSeq<Node>, after: number, what: Cut): readonly Splice[] {
  if (after < -1 || after >= target.items.length) {
    throw notThere(`There is no place ${after + 2} in that day.`);
  }
  const isBracketed = Boolean(target.flow);
  return exerciseList(source, target).put(
    after < 0 ? null : after,
    isBracketed && what.column !== null ? { ...what, text: bracketed(what.text) } : what,
  );
}

/** An exercise out of a list of dashes as a list in brackets holds it. */
function bracketed(dashed: string): string {
  if (/(?:^|\s)#/m.test(dashed)) throw new NotPossible(NO_ROOM_FOR_COMMENTS);
  const [exercise] = parsed(dashed).toJS() as [NewExercise];
  return asWritten(exercise, true).trim();
}

const NO_ROOM_FOR_COMMENTS: Problem = {
  what: 'That day is written in brackets, which have no room for the comments of this lift.',
  fix: 'Move it in an editor; nothing was changed here.',
};
