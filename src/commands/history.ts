import { spawnSync } from 'node:child_process';
import { Temporal } from 'temporal-polyfill';
import type { History } from '../journal/history.ts';
import { deletedRecords } from '../lifter/deleted-records.ts';
import { sessionNotes } from '../lifter/look-back.ts';
import { openLifter } from '../lifter/open-lifter.ts';
import { strengthOver, strengthsOn } from '../progression/lift-strength.ts';
import { historyText } from '../report/history-text.ts';
import { type LiftSession, liftRows, searchHistory } from '../report/lift-rows.ts';
import { jsonText } from '../text/json-text.ts';
import { nearestKey } from '../text/nearest.ts';
import { Refusal } from '../text/problem.ts';
import { safeOutput } from '../text/safe-text.ts';
import { lengthIn, lengthText, tapeOf } from '../training/length.ts';
import { inUnit, type Mass, massText, type Unit } from '../training/mass.ts';
import { isAttended } from './ask-yes-no.ts';
import type { Call, Run } from './call.ts';
import type { HistoryJson } from './history-schema.ts';
import { wholeNumber } from './operands.ts';
import { readDay } from './read-day.ts';
import { tellProblems } from './tell-problems.ts';
import { textSize } from './text-size.ts';

/** Prints results over time, of one lift with a plot of its estimate. */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, call.global);
  const history = lifter.journal().history();
  const unit = lifter.unit();
  if (call.options.deleted === true && !call.global.json) {
    const deleted = deletedRecords(history, unit);
    for (const { id, what } of deleted) call.print(`${what}  ${id}`);
    call.tell(
      deleted.length === 0
        ? 'Nothing is deleted.'
        : '"holdfast amend ID --restore" brings one of them back.',
    );
    return 0;
  }
  const lift = liftAsked(call, history);
  const found = searchHistory(history.results, searchAsked(call), sessionNotes(history));
  const rows = latestAsked(call, liftRows(found, lift, history.bodyMassOn), lifter.today());
  tellProblems(call, lifter);
  const text: string[] = [];
  if (call.global.json) {
    call.print(jsonText(historyJson(rows, history, unit)));
  } else if (rows.length === 0) {
    call.tell(
      history.results.length === 0
        ? 'No results yet: they come with the first session that is closed.'
        : 'Nothing fits.',
    );
  } else {
    const strength = lift === null ? [] : strengthOver(history, lift);
    text.push(...historyText(rows, strength, unit, textSize(call.ports)));
  }
  if (call.options.ids === true && !call.global.json) {
    const all = lift === null && NARROWS.every((name) => call.options[name] === undefined);
    const lines = [
      ...setIdLines(rows),
      ...(all ? [...weighInIdLines(history, unit), ...waistIdLines(history, unit)] : []),
    ];
    if (lines.length > 0) text.push('', ...lines);
  }
  if (text.length > 0) printLong(call, text.join('\n'));
  return 0;
};

/** Options that leave a part of the results out. */
const NARROWS = ['search', 'last', 'since'];

/** What is left of results in order of date by `--since` and then `--last`. */
function latestAsked(
  { options: { last, since } }: Call,
  rows: readonly LiftSession[],
  today: Temporal.PlainDate,
): readonly LiftSession[] {
  const from = typeof since === 'string' ? readDay(since, '--since', today) : null;
  const late = from
    ? rows.filter(({ result }) => Temporal.PlainDate.compare(result.date, from) >= 0)
    : rows;
  return typeof last === 'string'
    ? late.slice(-wholeNumber(last, '--last', 1, MOST_RESULTS))
    : late;
}

const MOST_RESULTS = 100_000;

const searchAsked = ({ options }: Call): string =>
  typeof options.search === 'string' ? options.search : '';

/** The lift's key, from its key or its name; null where none was asked for. */
function liftAsked({ args: [asked] }: Call, { results }: History): string | null {
  if (asked === undefined) return null;
  const names = new Map<string, string>();
  for (const { exercise } of results) {
    names.set(exercise.lift, exercise.lift);
    names.set(exercise.name.toLowerCase(), exercise.lift);
  }
  const found = names.get(asked.toLowerCase());
  if (found) return found;
  const near = nearestKey(asked, names.keys());
  const done = [...new Set(names.values())];
  throw new Refusal({
    what: `There are no results of "${asked}".`,
    fix: near
      ? `Did you mean "${near}"?`
      : done.length > 0
        ? `Lifts with results: ${done.join(', ')}.`
        : 'They come with the first session that is closed.',
  });
}

/** Ids under the table, for `amend`; the latest last. */
function setIdLines(rows: readonly LiftSession[]): string[] {
  return rows.flatMap(({ result }) => [
    `${result.date} ${result.exercise.name}  session ${result.session}`,
    ...result.sets.map(({ id }, at) => `  set ${at + 1}  ${id}`),
  ]);
}

const weighInIdLines = ({ weighIns }: History, unit: Unit): string[] =>
  weighIns.map(({ id, date, mass }) => `${date} ${massText(mass, unit)}  ${id}`);

const waistIdLines = ({ waists }: History, unit: Unit): string[] =>
  waists.map(({ id, date, length }) => `${date} waist ${lengthText(length, tapeOf(unit))}  ${id}`);

function historyJson(rows: readonly LiftSession[], history: History, unit: Unit): HistoryJson {
  const counted = rows.map(({ result: { exercise, date } }) => ({ lift: exercise.lift, date }));
  const strengthOn = strengthsOn(history, counted);
  const shown = (mass: number | null | undefined) =>
    mass === null || mass === undefined
      ? null
      : Number(inUnit(Math.round(mass) as Mass, unit).toFixed(2));
  return {
    schema: 1,
    unit,
    results: rows.map(({ result, best }) => {
      const { exercise, sets } = result;
      const isTimed = exercise.counts === 'seconds';
      const strength = isTimed ? null : strengthOn(exercise.lift, result.date);
      return {
        session: result.session,
        date: result.date.toString(),
        program: result.program,
        day: result.day,
        lift: exercise.lift,
        name: exercise.name,
        track: exercise.track,
        style: exercise.style,
        counts: exercise.counts,
        move: exercise.move,
        e1rm: shown(best),
        strength: shown(strength?.middle),
        strength_low: shown(strength?.low),
        strength_high: shown(strength?.high),
        finished: result.finished,
        pain: result.pain,
        lighter: result.lighter,
        sets: sets.map(({ id, load, count, reserve }) => ({
          id,
          load: inUnit(load, unit),
          count,
          reserve,
        })),
      };
    }),
    weigh_ins: history.weighIns.map(({ id, date, mass }) => ({
      id,
      date: date.toString(),
      mass: inUnit(mass, unit),
    })),
    waists: history.waists.map(({ id, date, length }) => ({
      id,
      date: date.toString(),
      waist: lengthIn(length, tapeOf(unit)),
      unit: tapeOf(unit),
    })),
  };
}

/** The pager shows colours and short texts as they are, begins at the end, and goes where one screen is enough. */
const USUAL_PAGER = 'less -FRX +G';

/**
 * Prints text; on a terminal that is too small for it through the lifter's pager, `PAGER`. An empty
 * one, or `cat`, prints at once, and so does a pager that is not there.
 */
function printLong(call: Pick<Call, 'ports' | 'global' | 'print'>, text: string): void {
  const { print } = call;
  const { stdout, env } = call.ports;
  const pager = (env.PAGER ?? USUAL_PAGER).trim();
  const isShort = text.split('\n').length < (stdout.rows ?? Number.POSITIVE_INFINITY);
  if (!isAttended(call) || isShort || env.TERM === 'dumb' || !pager) {
    print(text);
    return;
  }
  const [command = '', ...options] = pager.split(/\s+/);
  const { status, error } = spawnSync(command, options, {
    input: `${safeOutput(text)}\n`,
    stdio: ['pipe', 'inherit', 'inherit'],
  });
  // 127 and ENOENT: there is no such program. A pager that was left early has shown enough.
  if (status === 127 || (error && 'code' in error && error.code === 'ENOENT')) print(text);
}
