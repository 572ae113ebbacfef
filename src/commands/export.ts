import { reviewOf, sessionNotes } from '../lifter/look-back.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import { reasonWords } from '../lifter/rules.ts';
import { dueDay } from '../progression/due-day.ts';
import { calendarEntries, calendarText, daysAhead } from '../report/calendar.ts';
import { historyJson } from '../report/history-json.ts';
import { pageOf } from '../report/page-of.ts';
import { setsCsv, waistsCsv, weighInsCsv } from '../report/sets-csv.ts';
import { jsonText } from '../text/json-text.ts';
import { nearestKey } from '../text/nearest.ts';
import { WrongUse } from '../text/problem.ts';
import { tapeOf } from '../training/length.ts';
import type { Call, Run } from './call.ts';
import { writeOut } from './write-out.ts';

/** Weeks of training days that the calendar looks ahead, and weeks that the page looks back. */
const WEEKS_AHEAD = 4;
const WEEKS_BACK = 16;

type Maker = (lifter: Lifter, call: Call) => string | Promise<string>;

const FORMATS: Readonly<Record<string, Maker>> = {
  csv: (lifter, call) => {
    const history = lifter.journal().history();
    const unit = lifter.unit();
    if (call.options.waists === true) return waistsCsv(history.waists, tapeOf(unit));
    return call.options.weighIns === true
      ? weighInsCsv(history.weighIns, unit)
      : setsCsv(history, unit, sessionNotes(history));
  },
  json: (lifter) => {
    const history = lifter.journal().history();
    const whole = { ...history, events: history.events() };
    return `${jsonText(historyJson(whole, lifter.unit(), lifter.today()))}\n`;
  },
  ics: (lifter, call) => {
    const { sessions, results, lately } = lifter.journal().history();
    const program = lifter.program();
    const due = dueDay(program, lately, lifter.today());
    const ahead = daysAhead(program, sessions, due.day.name, due.nextGood, WEEKS_AHEAD);
    return calendarText(
      calendarEntries(sessions, results, ahead, program.name, program.unit),
      call.ports.clock.read().wall,
    );
  },
  html: async (lifter) => {
    const unit = lifter.unit();
    const { pageHtml } = await import('../report/svg/page.tsx');
    const words = (reason: Parameters<typeof reasonWords>[0]) => reasonWords(reason, unit);
    const history = lifter.journal().history();
    return pageHtml(pageOf(history, reviewOf(lifter, WEEKS_BACK), words, unit));
  },
};

/** Writes everything out, to stdout or to a file. */
export const run: Run = async (call) => {
  const asked = String(call.options.as ?? (call.global.json ? 'json' : ''));
  if (call.global.json && asked !== 'json') {
    throw new WrongUse({
      what: `--json was given with --as ${asked}.`,
      fix: 'Give one of the two.',
    });
  }
  const make = Object.hasOwn(FORMATS, asked) ? FORMATS[asked] : undefined;
  if (!make) throw new WrongUse(unknownFormat(asked));
  const lifter = openLifter(call.ports, call.global);
  writeOut(call, await make(lifter, call), lifter.folders.data);
  return 0;
};

function unknownFormat(asked: string) {
  const names = Object.keys(FORMATS);
  const near = nearestKey(asked, names);
  return {
    what: asked === '' ? '--as is missing.' : `There is no export as "${asked}".`,
    fix: near ? `Did you mean "${near}"?` : `Write --as with one of ${names.join(', ')}.`,
  };
}
