import { describe, expect, it } from 'vitest';
import { readEvent } from '../../src/journal/read-event.ts';
import { because } from '../../src/progression/rules/progression-rules.ts';
import { importCsv } from '../../src/report/import-csv.ts';
import { setsCsv } from '../../src/report/sets-csv.ts';
import { fold } from '../../src/session/apply.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { resultsOf, sessionDoneOf } from '../../src/session/results.ts';
import { day, LIFTS, madePast, madeResult } from '../cut/made.ts';
import { madeCut } from './made-cut.ts';

/** What the journal would make of imported facts. */
function folded(text: string) {
  const { sessions } = importCsv(text, {
    sessions: new Set(),
    weighIns: new Set(),
    waists: new Set<string>(),
    until: day('2027-01-01'),
  });
  return sessions.map(({ facts, start, zone }) => {
    const events = facts.map(
      (fact, at): SessionEvent => ({
        ...fact,
        id: `file:${at + 1}`,
        at: { wall: start, up: null, boot: null },
        zone,
      }),
    );
    expect(events.map(readEvent)).not.toContain(null);
    const state = fold(events);
    if (!state) throw new Error('an imported session opens');
    return { results: resultsOf(state), done: sessionDoneOf(state) };
  });
}

/** What a file of sets does not hold. */
const bare = (result: ReturnType<typeof madeResult>) => ({
  ...result,
  exercise: { ...result.exercise, rest: { from: 0, to: 0 }, inProgram: undefined },
  // Sets get ids of the file that they are read into.
  sets: result.sets.map((set) => ({ ...set, id: '' })),
});

/** Its sets alternated with another's, and ended where a rep did not come up. */
const inPairAndFailed = (result: ReturnType<typeof madeResult>) => ({
  ...result,
  exercise: { ...result.exercise, pair: 'one' },
  sets: result.sets.map((set) => ({ ...set, failed: true as const })),
});

describe('a history that went out as sets and came back', () => {
  it('gives progression the same results, session by session', () => {
    const { past } = madeCut();
    const back = folded(setsCsv(past, 'lb'));
    expect(back.flatMap(({ results }) => results).map(bare)).toEqual(past.results.map(bare));
    expect(back.map(({ done }) => [done.session, done.date, done.aim, done.how])).toEqual(
      past.sessions.map(({ session, date, aim, how }) => [session, date, aim, how]),
    );
  });

  it('comes back the same whatever order its rows were brought into', () => {
    const { past } = madeCut();
    const [head = '', ...rows] = setsCsv(past, 'kg').trimEnd().split('\r\n');
    const turned = [head, ...rows.toReversed()].join('\r\n');
    const sorted = [head, ...rows.toSorted()].join('\r\n');
    const whole = folded([head, ...rows].join('\r\n'));
    const bySession = (text: string) =>
      folded(text).toSorted((a, b) => a.done.session.localeCompare(b.done.session));
    const same = whole.toSorted((a, b) => a.done.session.localeCompare(b.done.session));
    expect(bySession(turned)).toEqual(same);
    expect(bySession(sorted)).toEqual(same);
  });

  it('keeps the aims of sets that were not done: they stand again next time', () => {
    const made = madeResult({
      lift: LIFTS.squat,
      on: '2026-11-20',
      load: 80,
      counts: [6],
      asked: 2,
    });
    const sets = [6, 6].map((aim) => ({ aim, range: made.exercise.range }));
    const cut = { ...made, finished: false, exercise: { ...made.exercise, sets } };
    const text = setsCsv(madePast([cut], null, { sessions: [] }), 'kg');
    const aims = (of: string) => folded(of)[0]?.results[0]?.exercise.sets.map(({ aim }) => aim);
    expect(aims(text)).toEqual([6, 6]);
    // A file of before they were told is read as it was.
    expect(aims(text.replace(',aims,', ',').replace(',6 6,', ','))).toEqual(
      [made.exercise.range[0], made.exercise.range[0]].with(0, 6),
    );
    expect(() => folded(text.replace(',6 6,', ',6 x,'))).toThrow('column aims: "6 x"');
  });

  it('keeps that a set was dropped, with whatever reason beside it: it stays so next time', () => {
    const slipping = { on: '2026-11-20', load: 80, asked: 3, planned: 4 } as const;
    const dropped = madeResult({
      ...slipping,
      lift: LIFTS.squat,
      counts: [5, 4, 4],
      why: [because('hold-match'), because('one-set-fewer', { style: 'straight' })],
    });
    const short = madeResult({ ...slipping, lift: LIFTS.bench, counts: [5, 5, 5] });
    const text = setsCsv(madePast([dropped, short], null, { sessions: [] }), 'kg');
    const whyOf = (of: string) =>
      folded(of).flatMap(({ results }) =>
        results.map(({ exercise }) => exercise.why.map(({ rule }) => rule)),
      );
    expect(whyOf(text)).toEqual([['one-set-fewer'], []]);
    // A file of before it was told is read as it was.
    const old = text
      .split('\r\n')
      .map((row) => row.replace(/,[a-z_]+$/, ''))
      .join('\r\n');
    expect(whyOf(old)).toEqual([[], []]);
  });

  it('keeps what was cut short, added, painful or light', () => {
    const odd = [
      inPairAndFailed(
        madeResult({ lift: LIFTS.squat, on: '2026-11-20', load: 80, counts: [6], asked: 3 }),
      ),
      madeResult({
        lift: LIFTS.bench,
        on: '2026-11-20',
        load: 60,
        counts: [8, 8, 8, 8],
        asked: 3,
        pain: true,
      }),
      madeResult({
        lift: LIFTS.raise,
        on: '2026-11-20',
        load: 8,
        counts: [14, 5],
        style: 'cluster',
        range: [12, 15],
        asked: 5,
        finished: false,
      }),
      madeResult({
        lift: LIFTS.plank,
        on: '2026-11-21',
        load: 0,
        counts: [45, 40],
        range: [30, 60],
        reserve: null,
        lighter: true,
        session: 's-light',
      }),
    ];
    const back = folded(setsCsv(madePast(odd, null, { sessions: [] }), 'kg')).flatMap(
      ({ results }) => results,
    );
    expect(
      back.map(bare).map(({ finished, pain, lighter, sets, date }) => ({
        finished,
        pain,
        lighter,
        sets,
        date,
      })),
    ).toEqual(
      odd.map(bare).map(({ finished, pain, lighter, sets, date }) => ({
        finished,
        pain,
        lighter,
        sets,
        date,
      })),
    );
    expect(back.at(-1)?.date).toEqual(day('2026-11-21'));
  });
});
