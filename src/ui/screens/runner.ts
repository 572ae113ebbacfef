import type { Offer } from '../../lifter/coach.ts';
import { isCluster, isOver, plannedSets } from '../../session/next-set.ts';
import { setsCountedIn } from '../../session/results.ts';
import { stageNow } from '../../session/stage-now.ts';
import type { ExerciseState, SessionState } from '../../session/state.ts';
import { spentMs } from '../../session/summary.ts';
import { columnsOf } from '../../text/columns.ts';
import { howMany } from '../../text/words.ts';
import { blockDigits } from '../digits.ts';
import { type Line, line, paragraph, span, spread } from '../line.ts';
import type { Model } from '../model.ts';
import type { Seen } from '../outcome.ts';
import { messageLines } from '../page.ts';
import { type Phase, placeOf } from '../phase.ts';
import { planText } from '../plan-words.ts';
import { entryLines } from '../runner/entry-lines.ts';
import { type Headline, headline } from '../runner/headline.ts';
import { implementLines, pictureLines, plateDigits } from '../runner/implement.ts';
import { RUNNER_KEYS } from '../runner/keys.ts';
import { nextLines, waitingLines } from '../runner/next-lines.ts';
import { runnerTexts } from '../runner/spoken.ts';
import type { ScreenModule } from '../screen.ts';
import { testSetWords } from '../set-plan.ts';
import { type Block, block, NICE, stacked } from '../stack.ts';
import type { Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';
import { loadText, minutesText, secondsText } from '../words.ts';

/** Rows that block digits may take at a height of screen. */
const digitRows = (rows: number): number => (rows >= 36 ? 14 : rows >= 24 ? 7 : 5);

/** The runner: the one thing that matters now in block digits, everything else quiet. */
function lines({ model, phase, coach }: Seen, columns: number, rows: number): Line[] {
  const { session, size } = model;
  if (!session || !phase) return [];
  const head = headline(model, phase);
  const plates = plateDigits(session, phase, coach, columns);
  // Where there is room for one of them, the plates come first: the load stands below in words.
  const platesOnly = size.rows < 24 && phase.kind !== 'resting' && plates.length > 0;
  const large = blockDigits(head.digits, columns, digitRows(size.rows)) ?? [head.digits];
  const digits = platesOnly ? plates : large.map((row) => line(row));
  const resting = phase.kind === 'resting' ? [line(restLine(phase, columns), 'drawn')] : [];
  const caption = head.caption.flatMap((text) => paragraph(text, columns, 'strong'));
  const state = stateLines(head, phase.kind === 'lifting', columns);
  const said = saidLines(model, columns);
  const entry = entryLines(model, phase, columns);
  // At the end nothing matters more than the numbers that the next key confirms.
  const entryRoom = rows - [state, digits, caption, said].flat().length;
  const fitting = phase.kind === 'all-done' && entry.length > entryRoom;
  // Every second of a rest counts; there is no room for it then but on tall screens.
  const isLow = size.rows < 30;
  const isTight = phase.kind === 'resting' && isLow;
  const top: Block[] = [
    block([topLine(model, phase, columns)], 6),
    block(state, 0, 1),
    block(digits, 0, 2),
    block(caption, 1, 1),
    block(resting, 5, 1),
    block(nextLines(session, phase, columns), 2, 1),
    block(waitingLines(session, phase, model.now, columns), 4),
    block(implementLines(session, phase, coach, columns), 2),
    block(fitting ? windowOf(entry, entryRoom, 0) : entry, 1, 1),
    block(platesOnly ? [] : plates, 5, 1),
    block(pictureLines(session, phase, coach, columns), isLow ? NICE : 6, 1),
    block(testSetLines(model, phase, columns), 3),
    block(noteLines(model, phase, columns), 7, 1),
    block(isTight ? [] : laterLines(session, phase, columns), 8, 1),
  ];
  return stacked(top, [block(said, 0)], rows);
}

function topLine({ session, now }: Model, phase: Phase, columns: number): Line {
  if (!session) return [];
  const { prescription } = session;
  const left = setsLeft(session);
  const facts = `${howMany(left, 'set')} left · ${minutesText(spentMs(session, now) / 60_000)} in`;
  const name =
    columns >= 60 ? `${prescription.program} · ${prescription.day}  ` : `${prescription.day}  `;
  const marks = sessionLine(
    session,
    placeOf(phase)?.exercise ?? null,
    columns - name.length - facts.length - 2,
  );
  return spread([span(name), ...marks], [span(facts)], columns);
}

/**
 * State as a word, reversed; the lift and which set it is beside it, or below where that is too
 * wide. While lifting the whole line is reversed: the change is seen from the corner of an eye.
 */
function stateLines({ word, title, place }: Headline, lifting: boolean, columns: number): Line[] {
  const besideWidth = columnsOf(` ${word}  ${title}   ${place}`) + 3;
  const beside = besideWidth <= columns ? title : '';
  const left = beside ? ` ${word}   ${beside}` : ` ${word} `;
  const gap = ' '.repeat(Math.max(1, columns - 3 - columnsOf(left + place)));
  const pill: Line = [span('▐'), span(` ${word} `, 'state'), span('▌')];
  const named: Line = beside ? [...pill, span(`  ${beside}`, 'strong')] : pill;
  const band: Line = lifting
    ? [span('▐'), span(`${left}${gap}${place} `, 'state'), span('▌')]
    : spread(named, [span(place)], columns);
  return beside ? [band] : [band, ...paragraph(title, columns, 'strong').slice(0, 2)];
}

/** What comes after the present exercise. */
function laterLines(session: SessionState, phase: Phase, columns: number): Line[] {
  const here = placeOf(phase)?.exercise;
  const later = session.exercises.filter((one, index) => index !== here && !isOver(one));
  return later.flatMap(({ prescribed }) =>
    paragraph(
      `then ${prescribed.name} · ${planText(prescribed, session.prescription.unit)}`,
      columns,
      'plain',
      5,
    ),
  );
}

/** What is offered in the last set; nobody reads it while resting before another. */
function testSetLines({ session }: Model, phase: Phase, columns: number): Line[] {
  const place = placeOf(phase);
  const exercise = place && session?.exercises[place.exercise];
  const words = exercise ? testSetWords(exercise, place) : null;
  return words === null ? [] : paragraph(words, columns);
}

function noteLines({ session }: Model, phase: Phase, columns: number): Line[] {
  // During a rest nobody reads how to do it.
  if (phase.kind === 'resting') return [];
  const place = placeOf(phase);
  const exercise = place && session?.exercises[place.exercise]?.prescribed;
  if (!exercise) return [];
  const words = [exercise.note, exercise.caution, exercise.form].filter((one) => one !== null);
  return words.slice(0, 2).flatMap((text) => paragraph(text, columns));
}

function saidLines(model: Model, columns: number): Line[] {
  const { ui, offer, session, now } = model;
  const set = session ? stageNow(session, now).clockSetMs : 0;
  if (ui.message) return messageLines(ui.message, columns);
  if (offer) return paragraph(offerText(offer, session), columns).slice(0, 2);
  if (set === 0) return [];
  const way = set > 0 ? 'forward' : 'back';
  const words = `The clock was set ${way} by ${secondsText(Math.round(Math.abs(set) / 1000))}; the rest is kept by the machine's own time.`;
  return paragraph(words, columns).slice(0, 2);
}

/** The key and the load first: on a small screen the reason may be cut. */
function offerText({ by, words, addsSet }: Offer, session: Model['session']): string {
  const unit = session?.prescription.unit ?? 'kg';
  const more = addsSet ? ' in one set more' : '';
  return by.load === null ? words : `y takes ${loadText(by.load, by, unit)}${more}: ${words}`;
}

/**
 * A rest as a fuse that burns down from the right: the line is time left, the post marks the early
 * end. A cell changes only every few seconds and nothing stands behind it, so it costs next to
 * nothing to keep.
 */
function restLine(phase: Extract<Phase, { kind: 'resting' }>, columns: number): string {
  const { rest } = phase.running;
  const whole = rest.to * 1000;
  const cells = (ms: number) => Math.round((ms / whole) * columns);
  const left = Math.max(0, cells(whole - phase.elapsedMs));
  const post = rest.from < rest.to ? cells(whole - rest.from * 1000) : -1;
  // Blanks at its end would be written anew each time the line gets shorter.
  return Array.from({ length: columns }, (_, x) => (x === post ? '╂' : x < left ? '━' : ' '))
    .join('')
    .trimEnd();
}

const MARKS = { done: '■', now: '◧', open: '□', left: '·' } as const;

const setsOpen = (exercise: ExerciseState): number =>
  isOver(exercise)
    ? 0
    : Math.max(0, plannedSets(exercise) - exercise.done.length - exercise.skipped);

const setsDone = ({ done, earlier }: ExerciseState): number =>
  earlier.reduce((sum, work) => sum + work.done.length, done.length);

/** Work sets still to come in the whole session; a cluster counts as one, as it does everywhere. */
const setsLeft = (session: SessionState): number =>
  session.exercises.reduce(
    (sum, one) => sum + (isCluster(one) ? Math.min(1, setsOpen(one)) : setsOpen(one)),
    0,
  );

/**
 * The session as one line: a mark for each set, the exercises apart from each other. Where that
 * is too wide, the number of sets done of all.
 */
function sessionLine(session: SessionState, current: number | null, columns: number): Line {
  const parts = session.exercises.map((exercise, index) => marksOf(exercise, index === current));
  const text = parts.filter((part) => part !== '').join(' ');
  if (text.length <= columns) return [span(text, 'drawn')];
  const done = setsCountedIn(session);
  const short = `${done} of ${done + setsLeft(session)} done`;
  return short.length <= columns ? [span(short)] : [];
}

function marksOf(exercise: ExerciseState, isCurrent: boolean): string {
  const open = setsOpen(exercise);
  const now = isCurrent && open > 0 ? 1 : 0;
  return (
    MARKS.done.repeat(setsDone(exercise)) +
    MARKS.left.repeat(exercise.skipped) +
    MARKS.now.repeat(now) +
    MARKS.open.repeat(open - now)
  );
}

export const RUNNER_SCREEN: ScreenModule<Extract<Screen, { kind: 'runner' }>> = {
  keys: RUNNER_KEYS,
  lines,
  spoken: runnerTexts,
  tellsItself: true,
  atTheBar: true,
};
