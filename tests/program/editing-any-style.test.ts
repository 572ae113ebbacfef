import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import {
  addExercise,
  moveExercise,
  removeExercise,
  withHead,
  withSets,
} from '../../src/program/edit-program.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { anyStyle, type MadeFile } from './written-in-any-style.ts';

/** `EDITED_FILES=10000` is the long form. */
const numRuns = Number(process.env.EDITED_FILES ?? 150);
vi.setConfig({ testTimeout: 10_000 + numRuns * 20 });

const liftsOf = (text: string) => {
  const read = readProgram(text, 'p');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.program.days.map(({ exercises }) => exercises.map(({ lift }) => lift.key));
};
const setsOf = (text: string) => {
  const read = readProgram(text, 'p');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.program.days.map(({ exercises }) =>
    exercises.map((each) => (each.style === 'cluster' ? each.mostSets : each.sets)),
  );
};
const done = (result: unknown): string => {
  if (typeof result === 'string') return result;
  throw new Error(JSON.stringify(result));
};
/** Lines with something on them, byte for byte. */
const full = (text: string) => text.split('\n').filter((line) => line.trim() !== '');

/** The lines of `before` without those of an exercise; of a day on one line, without that line too. */
function others(
  { text, lines, styles }: MadeFile,
  owner: string,
  alsoDays: readonly number[] = [],
) {
  const shared = [Number(owner.split('.')[0]), ...alsoDays].filter(
    (day) => styles[day] === 'one line',
  );
  let day = -1;
  const kept = lines.filter((line) => {
    if (/^ *- name: /.test(line.text) && line.of === null) day += 1;
    if (line.of === null && shared.includes(day) && line.text.includes('exercises: ['))
      return false;
    return line.of !== owner && line.text.trim() !== '';
  });
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
  return kept.map((line, at) => (at === 0 && lines[0] === line ? mark + line.text : line.text));
}

/** Takes the lines out of a text in their order; gives what is left, or fails at the line missing. */
function beyond(text: string, lines: readonly string[], loose: RegExp | null = null): string[] {
  const rest: string[] = [];
  let at = 0;
  for (const line of full(text).map((each) => each.replace(/\r$/, ''))) {
    if (
      line === lines[at] ||
      (loose && line.replace(loose, '$1') === lines[at]?.replace(loose, '$1'))
    )
      at += 1;
    else rest.push(line);
  }
  expect(lines.slice(at)).toEqual([]);
  return rest;
}

/** The comma that a list in brackets needs behind what was its last entry. */
const COMMA = /^(.*\})(,?)(?=\s*(#|$))/;
/** Line ends stay what they were, and so does whether the last line has one. */
const keepsEnds = (file: MadeFile, after: string) => {
  if (file.newline === '\r\n') expect(after.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  else expect(after).not.toContain('\r');
  expect(after.endsWith('\n')).toBe(file.text.endsWith('\n'));
};

const place = fc.record({ file: anyStyle(), day: fc.nat(), exercise: fc.nat(), to: fc.nat() });
const at = ({ file, day, exercise }: { file: MadeFile; day: number; exercise: number }) => {
  const chosen = day % file.days.length;
  return { day: chosen, exercise: exercise % (file.days[chosen]?.length ?? 1) };
};

it('another number of sets changes that number and nothing else', () => {
  fc.assert(
    fc.property(place, (given) => {
      const { text } = given.file;
      const where = at(given);
      const before = setsOf(text);
      const after = done(withSets(text, where, 7));
      const wanted = before.map((row) => [...row]);
      wanted[where.day]![where.exercise] = 7;
      expect(setsOf(after)).toEqual(wanted);
      keepsEnds(given.file, after);
      // A last line without an end has no other to be compared with.
      const linesOf = (all: string) => all.split(given.file.newline);
      const [old, now] = [linesOf(text), linesOf(after)];
      const first = old.findIndex((line, index) => line !== now[index]);
      const isNew = now.length > old.length;
      if (isNew) {
        expect(now.splice(first, 1)[0]).toMatch(/^ +most_sets: 7$/);
        expect(now).toEqual(old);
      } else {
        expect(now.filter((line, index) => line !== old[index])).toHaveLength(1);
        // Character by character: the number, or a key more in brackets.
        const [was = '', is = ''] = [old[first], now[first]];
        let same = 0;
        while (was[same] === is[same]) same += 1;
        const tail = is.slice(same).replace(/^(?:7|, most_sets: 7)/, '');
        expect(was.slice(same).replace(/^\d/, '')).toBe(tail);
      }
    }),
    { numRuns },
  );
});

it('a lift taken out takes its own lines and the comment above it, and nothing else', () => {
  fc.assert(
    fc.property(place, (given) => {
      const where = at(given);
      fc.pre((given.file.days[where.day]?.length ?? 0) > 1);
      const after = done(removeExercise(given.file.text, where));
      const wanted = given.file.days.map((row) => [...row]);
      wanted[where.day]?.splice(where.exercise, 1);
      expect(liftsOf(after)).toEqual(wanted);
      keepsEnds(given.file, after);
      const rest = beyond(after, others(given.file, `${where.day}.${where.exercise}`));
      expect(rest).toHaveLength(given.file.styles[where.day] === 'one line' ? 1 : 0);
    }),
    { numRuns },
  );
});

it('a lift moved takes its own lines along, and nothing else', () => {
  let refused = 0;
  fc.assert(
    fc.property(place, fc.nat(), (given, toDay) => {
      const { file } = given;
      const from = at(given);
      fc.pre((file.days[from.day]?.length ?? 0) > 1);
      const day = toDay % file.days.length;
      const room = (file.days[day]?.length ?? 0) + (day === from.day ? 0 : 1);
      const to = { day, exercise: given.to % room };
      const moved = moveExercise(file.text, from, to);
      if (typeof moved !== 'string') {
        // Comments have no room in brackets: nothing is done rather than one lost.
        expect(moved.what).toContain('no room for the comments');
        expect([file.styles[from.day], file.styles[to.day] === 'dashes']).toEqual([
          'dashes',
          false,
        ]);
        refused += 1;
        return;
      }
      const wanted = file.days.map((row) => [...row]);
      wanted[to.day]?.splice(to.exercise, 0, ...(wanted[from.day]?.splice(from.exercise, 1) ?? []));
      expect(liftsOf(moved)).toEqual(wanted);
      keepsEnds(file, moved);
      const owner = `${from.day}.${from.exercise}`;
      const rest = beyond(moved, others(file, owner, [day]), COMMA);
      const own = file.lines.filter(({ of }) => of === owner).map(({ text }) => text.trim());
      const inLine = [from.day, day].filter((each) => file.styles[each] === 'one line');
      if (inLine.length > 0 || file.styles[day] !== file.styles[from.day]) {
        expect(rest.length).toBeLessThanOrEqual(Math.max(own.length, 1) + new Set(inLine).size);
      } else if (file.styles[day] === 'dashes')
        expect(rest.map((line) => line.trim()).toSorted()).toEqual(own.toSorted());
      // An entry that was commented out is no place to count by, so the way back may end beside it.
      if (file.styles[day] !== 'dashes' || file.text.includes('# - lift')) return;
      if (file.styles[from.day] !== 'dashes') return;
      const trimmed = (text: string) => full(text).map((line) => line.trim());
      expect(trimmed(done(moveExercise(moved, to, from)))).toEqual(trimmed(file.text));
    }),
    { numRuns },
  );
  expect(refused).toBeLessThan(numRuns / 4);
});

it('a lift added adds lines of its own, and touches no other', () => {
  fc.assert(
    fc.property(place, (given) => {
      const { file } = given;
      const { day } = at(given);
      const where = { day, exercise: given.to % ((file.days[day]?.length ?? 0) + 1) };
      const cluster = { lead: '12-15', rest: '10-15 s' };
      const added = { lift: 'hammer-curl', cluster, start: 8 };
      const after = done(addExercise(file.text, where, added));
      const wanted = file.days.map((row) => [...row]);
      wanted[day]?.splice(where.exercise, 0, 'hammer-curl');
      expect(liftsOf(after)).toEqual(wanted);
      keepsEnds(file, after);
      const rest = beyond(after, others(file, `${day}.-`), COMMA);
      expect(rest).toHaveLength(file.styles[day] === 'dashes' ? 3 : 1);
    }),
    { numRuns },
  );
});

it('a goal comes and goes without touching another line', () => {
  fc.assert(
    fc.property(anyStyle(), ({ text }) => {
      const added = withHead(text, 'goal_weight', '75');
      if (typeof added !== 'string') return;
      expect(beyond(added, full(text.replaceAll('\r', '')))).toEqual(['goal_weight: 75']);
      expect(withHead(added, 'goal_weight', null)).toBe(text);
    }),
    { numRuns },
  );
});
