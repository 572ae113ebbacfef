import { dueDay } from '../progression/due-day.ts';
import { calendarEntries, calendarText, daysAhead } from '../report/calendar.ts';
import { historyJson } from '../report/history-json.ts';
import { pageOf } from '../report/page-of.ts';
import { setsCsv, weighInsCsv } from '../report/sets-csv.ts';
import { jsonText } from '../text/json-text.ts';
import { nearestKey } from '../text/nearest.ts';
import { WrongUse } from '../text/problem.ts';
import { reviewOf, sessionNotes } from '../workbench/look-back.ts';
import { openWorkbench, type Workbench } from '../workbench/open-workbench.ts';
import { reasonWords } from '../workbench/rules.ts';
import type { Call, Run } from './call.ts';
import { writeOut } from './write-out.ts';

/** Weeks of training days that the calendar looks ahead, and weeks that the page looks back. */
const WEEKS_AHEAD = 4;
const WEEKS_BACK = 16;

type Maker = (workbench: Workbench, call: Call) => string | Promise<string>;

const FORMATS: Readonly<Record<string, Maker>> = {
  csv: (workbench, call) => {
    const history = workbench.journal().history();
    const unit = workbench.unit();
    return call.options.weighIns === true
      ? weighInsCsv(history.weighIns, unit)
      : setsCsv(history, unit, sessionNotes(history));
  },
  json: (workbench) => {
    const history = workbench.journal().history();
    const whole = { ...history, events: history.events() };
    return `${jsonText(historyJson(whole, workbench.unit(), workbench.today()))}\n`;
  },
  ics: (workbench, call) => {
    const { sessions, results, ...rest } = workbench.journal().history();
    const program = workbench.program();
    const past = { sessions, results, ...rest };
    const due = dueDay(program, past, workbench.today());
    const ahead = daysAhead(program, sessions, due.day.name, due.nextGood, WEEKS_AHEAD);
    return calendarText(
      calendarEntries(sessions, results, ahead, program.name, program.unit),
      call.ports.clock.read().wall,
    );
  },
  html: async (workbench) => {
    const unit = workbench.unit();
    const { pageHtml } = await import('../report/svg/page.tsx');
    const words = (reason: Parameters<typeof reasonWords>[0]) => reasonWords(reason, unit);
    const history = workbench.journal().history();
    return pageHtml(pageOf(history, reviewOf(workbench, WEEKS_BACK), words, unit));
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
  const workbench = openWorkbench(call.ports, call.global);
  writeOut(call, await make(workbench, call), workbench.folders.data);
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
