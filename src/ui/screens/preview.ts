import type { PrescribedExercise, Prescription } from '../../progression/prescription.ts';
import { shortDayWords } from '../../text/day-words.ts';
import { type Mass, massText, type Unit } from '../../training/mass.ts';
import type { Bench } from '../../workbench/bench.ts';
import type { Today } from '../../workbench/prepare.ts';
import { BLANK, indented, type Line, line, paragraph, span, spread } from '../line.ts';
import { detailTexts, planText } from '../plan-words.ts';
import type { Model, Screen } from '../ui-state.ts';
import { scrollTo, windowOf } from '../window.ts';
import { loadText, repsText } from '../words.ts';

type Preview = Extract<Screen, { kind: 'preview' }>;

const INDENT = 2;

/** Before the session: what was done last time, what is due, what changes and why. */
export function previewLines(
  { choices }: Model,
  screen: Preview,
  bench: Bench,
  columns: number,
  rows: number,
): Line[] {
  const { today, chosen } = screen;
  const head = headLines(today, choices.cautions === 'doctor-first', bench, columns);
  const blocks = today.prescription.exercises.map((exercise, index) => [
    BLANK,
    ...exerciseLines(exercise, index === chosen, today.prescription.unit, bench, columns),
  ]);
  const before = blocks.slice(0, chosen).reduce((sum, one) => sum + one.length, head.length);
  const end = before + (blocks[chosen]?.length ?? 0);
  // With the first exercise the head is in sight: it holds what to know before starting.
  const scroll = chosen === 0 ? 0 : scrollTo(before + 1, end, rows);
  return windowOf([...head, ...blocks.flat()], rows, scroll);
}

const STATES: Readonly<Record<Today['state'], string | null>> = {
  due: null,
  open: 'This session is open: space goes on where you left it.',
  'done-today': 'You have trained today already. This is the session after it.',
};

function headLines(today: Today, doctorFirst: boolean, bench: Bench, columns: number): Line[] {
  const { prescription, minutes, state, elsewhere } = today;
  const title = [span(prescription.program), span(' · '), span(prescription.day, 'strong')];
  const facts = `${shortDayWords(prescription.date)} · ${Math.round(minutes)} min`;
  const said = [
    doctorFirst ? 'You answered yes to a question about your health: see a doctor first.' : null,
    elsewhere
      ? `This session is open on ${elsewhere.device} since ${elsewhere.since}. Space takes it over and goes on here.`
      : STATES[state],
    prescription.lighter ? 'A lighter week: fewer sets, same loads.' : null,
    prescription.short ? shortText(prescription.short) : null,
    ...prescription.warnings.map((reason) => bench.reasonWords(reason).text),
    state === 'open' ? null : findingsText(bench),
  ].filter((text) => text !== null);
  const wide = spread(title, [span(facts)], columns);
  return [
    ...(wide === title ? [title, line(facts)] : [wide]),
    ...(said.length > 0 ? [BLANK] : []),
    ...said.flatMap((text) => paragraph(`! ${text}`, columns, 'alert', 2)),
  ];
}

/** What a short day is without, in a line; the key for why lists it with the reasons. */
function shortText({ minutes, cut }: NonNullable<Prescription['short']>): string {
  const named = (key: string) =>
    cut.filter(({ rule }) => rule === key).map(({ facts }) => String(facts.name));
  const out = named('short-left-out');
  const fewer = named('short-sets');
  const what = [
    ...(out.length > 0 ? [`without ${out.join(', ')}`] : []),
    ...(fewer.length > 0 ? [`fewer sets of ${fewer.join(', ')}`] : []),
    'shorter rests',
  ];
  return `Cut to ${minutes} min: ${what.join('; ')}. w says why, k cuts further.`;
}

/** How much the check has to say of the program. */
function findingsText({ desk }: Bench): string | null {
  const open = desk.findings().filter(({ accepted }) => accepted === null);
  const errors = open.filter(({ severity }) => severity === 'error').length;
  if (open.length === 0) return null;
  const count = open.length === 1 ? '1 finding' : `${open.length} findings`;
  return errors > 0
    ? `The check has ${count}, ${errors} of them an error that stops the session: f shows them.`
    : `The check has ${count} on the program: f shows them.`;
}

function exerciseLines(
  exercise: PrescribedExercise,
  isChosen: boolean,
  unit: Unit,
  bench: Bench,
  columns: number,
): Line[] {
  const inner = columns - INDENT;
  const text = (words: string, role: 'plain' | 'quiet' | 'strong' = 'plain') =>
    paragraph(words, inner, role, 2).map((one) => indented(one, INDENT));
  const [reason] = exercise.why;
  const name: Line = [span(isChosen ? '▸ ' : '  ', 'drawn'), span(exercise.name, 'strong')];
  const move = moveText(exercise, unit);
  const named = spread(name, [span(move, 'strong')], columns);
  return [
    named,
    // What changes is never left away for want of room.
    ...(named === name && move ? text(move, 'strong') : []),
    ...text(planText(exercise, unit), 'strong'),
    ...text(lastText(exercise, unit)),
    ...(reason ? text(bench.reasonWords(reason).text) : []),
    ...(exercise.askPain ? text('Pain was marked last time; you will be asked first.') : []),
    ...(isChosen ? detailTexts(exercise, unit, bench).flatMap((words) => text(words)) : []),
  ];
}

/** What progression does, in a word or two: `up 2.5 kg`, `hold`, `first time`. */
function moveText({ move, load, last }: PrescribedExercise, unit: Unit): string {
  if (move === 'start') return 'first time';
  const change = load === null || !last ? 0 : load - last.load;
  if (change === 0 || move === 'hold') return move;
  return `${move} ${massText(Math.abs(change) as Mass, unit)}`;
}

function lastText(exercise: PrescribedExercise, unit: Unit): string {
  const { last } = exercise;
  if (!last) return exercise.move === 'start' ? '' : 'not done in this way before';
  const sets = last.counts.map((count, at) => ({ count, reserve: last.reserves[at] ?? null }));
  const load = loadText(last.load, exercise, unit);
  return `${shortDayWords(last.date)}: ${load} · ${repsText(sets, exercise.counts)}`;
}
