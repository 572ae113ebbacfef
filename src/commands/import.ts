import { resolve } from 'node:path';
import { onDisk } from '../journal/disk/disk-trouble.ts';
import type { Journal } from '../journal/disk/journal.ts';
import { readEvent } from '../journal/records.ts';
import { importCsv } from '../report/import-csv.ts';
import { importJson, weighInKey } from '../report/import-json.ts';
import { Refusal } from '../text/problem.ts';
import { openWorkbench } from '../workbench/open-workbench.ts';
import type { Call, Run } from './call.ts';

/** Reads an exported file back, without doubles; says what came in and what was there already. */
export const run: Run = (call) => {
  const text = textOf(call);
  const journal = openWorkbench(call.ports, call.global).journal();
  const isJson = /^\s*\{/.test(text);
  call.print((isJson ? addEvents : addRows)(text, journal));
  return 0;
};

function textOf({ args: [file = ''], ports }: Call): string {
  const path = resolve(ports.cwd, file);
  const bytes = onDisk(`${path} could not be read`, () => ports.files.read(path));
  if (!bytes) {
    throw new Refusal({
      what: `There is no file ${path}.`,
      fix: 'Name a file that "holdfast export" wrote.',
    });
  }
  return new TextDecoder().decode(bytes);
}

function addEvents(text: string, journal: Journal): string {
  const { events, sessions, open } = journal.history();
  const { files, known, unread } = importJson(text, readEvent, {
    events: new Set(events().map(({ id }) => id)),
    sessions: new Set([...sessions, ...open].map(({ session }) => session)),
  });
  for (const file of files) journal.importEvents(file.events);
  const added = files.reduce((sum, file) => sum + file.events.length, 0);
  return [
    `${added} ${added === 1 ? 'event' : 'events'} added, ${known} were here already.`,
    ...(unread > 0 ? [`${unread} were written by a newer version and left out.`] : []),
  ].join(' ');
}

function addRows(text: string, journal: Journal): string {
  const { weighIns, sessions, open } = journal.history();
  const found = importCsv(text, {
    sessions: new Set([...sessions, ...open].map(({ session }) => session)),
    weighIns: new Set(weighIns.map(({ date, mass }) => weighInKey(date.toString(), mass))),
  });
  for (const session of found.sessions) journal.importSession(session);
  for (const weighIn of found.weighIns) journal.record({ type: 'weighed', ...weighIn });
  return `${found.sessions.length} sessions and ${found.weighIns.length} weigh-ins added, ${found.known} were here already.`;
}
