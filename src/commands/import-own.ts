import { basename } from 'node:path';
import { group } from 'd3-array';
import type { Lifter } from '../lifter/open-lifter.ts';
import { CATALOGUE } from '../program/catalogue.ts';
import { liftsMeant } from '../program/find-lifts.ts';
import type { Program } from '../program/program.ts';
import { weighInKey } from '../report/import-json.ts';
import { farLoads } from '../report/own-table/far-loads.ts';
import { MEANINGS } from '../report/own-table/own-columns.ts';
import type { DayFirst } from '../report/own-table/own-dates.ts';
import { type KnownSet, ownSessions, setsThere } from '../report/own-table/own-sessions.ts';
import { type OwnSet, type OwnTable, readOwnTable } from '../report/own-table/read-own-table.ts';
import { textTable } from '../report/table.ts';
import { wrapped } from '../text/columns.ts';
import { jsonText } from '../text/json-text.ts';
import { Refusal } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import { howMany } from '../text/words.ts';
import type { Lift } from '../training/lift.ts';
import { massText, type Unit } from '../training/mass.ts';
import { askYesNo, isAttended } from './ask-yes-no.ts';
import type { Call, ExitStatus } from './call.ts';
import { KNOWN_LIFTS, readAnswer } from './draft-answers.ts';
import { doubtText, weighInsTaken } from './import-doubts.ts';
import type { ImportJson } from './import-schema.ts';
import { longWork } from './long-work.ts';
import { textSize } from './text-size.ts';

/** Reads a table of the lifter's own: shows what it understood, and takes it in once that is right. */
export async function importOwn(text: string, call: Call, lifter: Lifter): Promise<ExitStatus> {
  const { options, ports, print, args } = call;
  const program = programOf(lifter);
  const lifts = program?.lifts ?? CATALOGUE;
  const unit = typeof options.unit === 'string' ? readAnswer.unit(options.unit) : null;
  const named = toldLifts(options.lift, lifts);
  const table = readOwnTable(text, {
    columns: typeof options.columns === 'string' ? options.columns : null,
    dayFirst: dayFirstOf(options.dates),
    unit: unit ?? lifter.unit(),
    liftsOf: (name) => {
      const told = named.findLast((each) => isSameName(each.name, name));
      return told ? [told.lift] : liftsMeant(lifts, name, lifter.gear());
    },
    until: lifter.today().add({ days: 1 }),
  });
  const strange = named.find(
    ({ name }) => !table.lifts.some((lift) => isSameName(lift.name, name)),
  );
  if (strange !== undefined) {
    throw new Refusal({
      what: `The table has no lift "${safeText(strange.name)}".`,
      fix: `It has ${table.lifts
        .slice(0, MOST_NAMED)
        .map(({ name }) => safeText(name))
        .join(', ')}.`,
    });
  }
  const history = lifter.journal().history();
  const { standing, takenBack, by } = setsThere(history);
  const laidBeside = (known: readonly KnownSet[]) =>
    ownSessions(table.sets, {
      known,
      label: args[0] === '-' ? 'table' : basename(args[0] ?? 'table'),
      unit: table.unit,
      zone: (wall) => ports.clock.zone(wall),
    });
  const own = laidBeside([...standing, ...takenBack]);
  const { sessions } = own;
  const stillThere = laidBeside(standing).known;
  const back = own.known - stillThere;
  const there = new Set(
    history.weighIns.map(({ date, mass }) => weighInKey(date.toString(), mass)),
  );
  const unseen = table.weighIns.filter(({ on, mass }) => {
    const key = weighInKey(on, mass);
    return !there.has(key) && there.add(key);
  });
  const takesDoubtful = options.doubtful === true;
  const { taken: weighIns, doubtful } = weighInsTaken(unseen, lifter, takesDoubtful);
  const counts = {
    sessions: sessions.length,
    weigh_ins: weighIns.length,
    known: stillThere,
    doubtful: doubtful.length,
  };
  const { width } = textSize(ports);
  const say = call.global.json ? call.tell : print;
  const answer = (said: string, written: boolean, id: string | null): ExitStatus => {
    const json: ImportJson = { schema: 1, written, id, ...counts };
    if (call.global.json) print(jsonText(json));
    say(wrapped(said, width).join('\n'));
    return 0;
  };
  const isUnitGuessed = unit === null && table.columns.unit === null;
  const doubts = doubtText(doubtful, lifter).flatMap((each) => wrapped(each, width));
  const far = farText(farLoads(table.sets, standing), table.unit);
  const looked = [...far.flatMap((each) => wrapped(each, width)), ...doubts];
  say([...shownTable(table, isUnitGuessed, width), ...looked, ''].join('\n'));
  const what = [
    ...(sessions.length > 0
      ? [`${howMany(own.fresh, 'set')} on ${howMany(sessions.length, 'day')}`]
      : []),
    ...(weighIns.length > 0 ? [howMany(weighIns.length, 'weigh-in')] : []),
  ].join(' and ');
  const knownText = [
    stillThere > 0
      ? ` ${howMany(stillThere, 'set')} of it ${stillThere === 1 ? 'is' : 'are'} here already.`
      : '',
    back > 0
      ? ` ${howMany(back, 'set')} of it ${back === 1 ? 'was' : 'were'} taken back: "holdfast amend ${by} --restore" brings ${back === 1 ? 'it' : 'them'} back.`
      : '',
  ].join('');
  if (what === '') return answer(`Nothing is new.${knownText}`, false, null);
  if (options.dryRun === true || !(await mayTake(call, `Take in ${what}, yes or no?`))) {
    const tried = `Nothing is written yet: ${what} would be added.${knownText} --take takes them in.`;
    return answer(tried, false, null);
  }
  const journal = lifter.journal();
  const steps = [
    ...sessions.map((session) => () => {
      journal.importSession(session);
      return session.session;
    }),
    ...weighIns.map((each) => () => journal.record({ type: 'weighed', ...each }).id),
  ];
  const of = await longWork(call, 'Importing', steps);
  const isStopped = of.length < steps.length;
  const { id } = journal.record({ type: 'imported', of });
  const done = isStopped
    ? `Stopped: ${of.length} of ${steps.length} days and weigh-ins are in; importing again adds the rest.`
    : `${what} added.${knownText}`;
  answer(`${done} "holdfast amend ${id} --delete" takes all of it back.`, true, id);
  return isStopped ? 130 : 0;
}

async function mayTake(call: Call, question: string): Promise<boolean> {
  if (call.options.take === true) return true;
  return isAttended(call) && askYesNo(call, question, 'no');
}

/** Null where it cannot be read: then its own lifts are not known. */
function programOf(lifter: Lifter): Program | null {
  try {
    return lifter.program();
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

const isSameName = (one: string, other: string): boolean =>
  one.toLowerCase() === other.toLowerCase();

/** `Bench=bench-press`: names of the table as they were typed, and the lifts that they mean. */
function toldLifts(
  told: Call['options'][string],
  lifts: ReadonlyMap<string, Lift>,
): readonly { readonly name: string; readonly lift: Lift }[] {
  return [told ?? []].flat().map((each) => {
    const part = String(each);
    const at = part.lastIndexOf('=');
    if (at < 1) {
      throw new Refusal({
        what: `"${safeText(part)}" names no lift.`,
        fix: 'Write --lift "Bench=bench-press": the name in the table, then the lift.',
      });
    }
    const [key = ''] = readAnswer.lifts(part.slice(at + 1), { lifts, unit: 'kg' });
    return { name: part.slice(0, at).trim(), lift: (lifts.get(key) ?? KNOWN_LIFTS.get(key))! };
  });
}

function dayFirstOf(told: Call['options'][string]): DayFirst {
  if (told === undefined) return null;
  if (told === 'day-first' || told === 'month-first') return told === 'day-first';
  throw new Refusal({
    what: `"${safeText(String(told))}" is no order of dates.`,
    fix: 'Write --dates day-first or --dates month-first.',
  });
}

const SEPARATORS: Readonly<Record<string, string>> = {
  ';': 'semicolons',
  '\t': 'tabs',
  ',': 'commas',
};

/** Lines in order, those one after the other together: `2, 5–9`. */
function linesText(lines: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const line of lines) {
    const last = runs.at(-1);
    if (last?.[1] === line - 1) last[1] = line;
    else runs.push([line, line]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ');
}

/** Reasons and lifts that are named. */
const MOST_NAMED = 6;

function shownTable(table: OwnTable, isUnitGuessed: boolean, width: number): string[] {
  const { columns, separator, unit, lifts, unplaced, warmUps } = table;
  const used = MEANINGS.filter((meaning) => columns.places.has(meaning));
  const spare = columns.names.filter((_, at) => ![...columns.places.values()].includes(at));
  const loads = isUnitGuessed
    ? `Loads without a unit are taken for ${unit}; --unit kg or --unit lb says otherwise.`
    : `Loads without a unit of their own are in ${unit}.`;
  const said = (text: string) => wrapped(text, width);
  const unknown = lifts.filter(({ meant }) => meant.length !== 1);
  return [
    ...said(
      `Read as a table with ${SEPARATORS[separator] ?? separator} between its columns. ${loads}`,
    ),
    '',
    ...textTable(
      [
        { heading: 'means', align: 'left' },
        { heading: 'column', align: 'left' },
        { heading: 'first line', align: 'left' },
      ],
      used.map((meaning) => {
        const at = columns.places.get(meaning) ?? 0;
        return [meaning, safeText(columns.names[at] ?? ''), safeText(columns.rows[0]?.[at] ?? '')];
      }),
      width,
    ),
    ...(spare.length > 0
      ? said(
          `Not read: ${spare.map((name) => safeText(name)).join(', ')}. --columns "load=HEADING" reads it otherwise.`,
        )
      : []),
    ...(lifts.length > 0
      ? [
          '',
          ...textTable(
            [
              { heading: 'in the table', align: 'left' },
              { heading: 'taken for', align: 'left' },
              { heading: 'sets', align: 'right' },
            ],
            lifts.map(({ name, meant, count }) => [
              safeText(name),
              meant[1]
                ? `one of ${meant.length} lifts`
                : (meant[0]?.name ?? 'no lift that is known'),
              String(count),
            ]),
            width,
          ),
        ]
      : []),
    ...(unknown[0] ? said(whichText(unknown[0])) : []),
    ...(warmUps > 0 ? said(`Left out as warm-ups: ${howMany(warmUps, 'line')}.`) : []),
    ...unplacedText(unplaced).flatMap(said),
  ];
}

/** What is taken as it stands, and may be a slip all the same. */
function farText(sets: readonly OwnSet[], unit: Unit): readonly string[] {
  if (sets.length === 0) return [];
  const named = sets
    .slice(0, MOST_NAMED)
    .map(
      ({ line, lift, load, count }) =>
        `${lift.name} ${massText(load, unit)} × ${count} (line ${line})`,
    );
  const more = sets.length > MOST_NAMED ? ' and more' : '';
  return [
    `Far heavier than any other day of the lift: ${named.join(', ')}${more}. Where that is a slip, mend the table first: it is taken as it stands.`,
  ];
}

function whichText({ name, meant }: OwnTable['lifts'][number]): string {
  const search = meant.length > 0 ? ` ${safeText(name).toLowerCase()}` : '';
  return `--lift "${safeText(name)}=KEY" says which lift it is; "holdfast lifts${search}" finds keys.`;
}

/** Lines of one cause together, causes that differ in what was found under one head: nothing goes without its line. */
function unplacedText(unplaced: OwnTable['unplaced']): readonly string[] {
  if (unplaced.length === 0) return [];
  const told = [...group(unplaced, ({ why }) => headOf(why))].flatMap(([head, of]) => {
    const causes = [...group(of, ({ why }) => why)].map(([why, same]) => ({
      why: safeText(why),
      lines: `line ${linesText(same.map(({ line }) => line))}`,
    }));
    const [first, ...more] = causes;
    if (!first) return [];
    if (more.length === 0) return [`- ${first.why}: ${first.lines}`];
    const found = causes.map(({ why, lines }) => `${QUOTED.exec(why)?.[0] ?? why}, ${lines}`);
    return [`- ${head}: ${found.join('; ')}`];
  });
  const count = unplaced.length === 1 ? '1 line finds' : `${unplaced.length} lines find`;
  return [`${count} no place and would be left out:`, ...told];
}

/** What a line of the table has, as a cause tells it. */
const QUOTED = /".*"/;

/** A cause without what was found: `no lift that is known`. */
const headOf = (why: string): string => why.replace(/^".*" is |".*"\s*/, '').trim();
