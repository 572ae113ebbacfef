import { describe, expect, it } from 'vitest';
import { cutStart as startOn } from '../../src/cut/cut-start.ts';
import { day, every, madeSession } from './made.ts';

const cut = { aim: 'cut', cutFrom: null } as const;
/** As it stands on the day of the last session. */
const cutStart = (
  program: Parameters<typeof startOn>[0],
  sessions: Parameters<typeof startOn>[1],
) => startOn(program, sessions, sessions.at(-1)?.date ?? day('2026-11-27'));
const on = (dates: readonly string[], more = {}) => dates.map((date) => madeSession(date, more));

describe('the start of the cut', () => {
  it('is the day that the program names', () => {
    expect(cutStart({ aim: 'cut', cutFrom: '2026-09-01' }, on(['2026-09-07']))).toEqual(
      day('2026-09-01'),
    );
  });

  it('is the first session under the aim, else', () => {
    const sessions = [
      ...on(every(3, '2026-07-01', 10), { aim: 'build' }),
      ...on(every(2, '2026-09-07', 12)),
    ];
    expect(cutStart(cut, sessions)).toEqual(day('2026-09-07'));
  });

  it('is not moved by a changed program file, nor by three weeks away', () => {
    const sessions = [
      ...on(['2026-09-07', '2026-09-09']),
      ...on(['2026-09-30', '2026-10-02'], { program: 'Another' }),
    ];
    expect(cutStart(cut, sessions)).toEqual(day('2026-09-07'));
  });

  it('begins anew after more than 28 days without', () => {
    const sessions = [
      ...on(['2026-05-04', '2026-06-01']),
      ...on(['2026-06-20'], { aim: 'maintain' }),
      ...on(['2026-07-10']),
    ];
    expect(cutStart(cut, sessions)).toEqual(day('2026-07-10'));
  });

  it('is nowhere any more once its last session is over 28 days ago, where no day was named', () => {
    const sessions = on(every(2, '2026-09-07', 12));
    const last = sessions.at(-1)?.date ?? day('2026-09-07');
    expect(startOn(cut, sessions, last.add({ days: 28 }))).toEqual(day('2026-09-07'));
    expect(startOn(cut, sessions, last.add({ days: 29 }))).toBeNull();
    const named = { aim: 'cut', cutFrom: '2026-09-01' } as const;
    expect(startOn(named, sessions, last.add({ days: 29 }))).toEqual(day('2026-09-01'));
  });

  it('is nowhere outside a cut, before its first session, or where none of it was done', () => {
    expect(cutStart({ aim: 'maintain', cutFrom: null }, on(['2026-09-07']))).toBeNull();
    expect(cutStart(cut, [])).toBeNull();
    expect(cutStart(cut, on(['2026-09-07'], { setsDone: 0 }))).toBeNull();
  });
});
