import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readProgram } from '../../src/program/read-program.ts';
import { PLAIN } from './program-text.ts';

const LINES = PLAIN.split('\n');

/** Pieces that mean something to YAML, to JavaScript or to us. */
const piece = fc.oneof(
  fc.constantFrom(
    ...': - ? # & * ! | > % @ ` " \' { } [ ] , ~ \t'.split(' '),
    ...['\n', '\r\n', '\0', '---', '...', '<<', '__proto__', 'null', '1:30', 'no', '012', '0x1F'],
    ...['5-8', '99', '-1', '1e999', '.nan', 'reps', 'sets', 'cluster', 'lifts', '\u202e', '\ud800'],
  ),
  fc.string({ maxLength: 6, unit: 'binary' }),
);

type Change = (text: string) => string;

const at = fc.nat({ max: PLAIN.length });
const line = fc.nat({ max: LINES.length - 1 });

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.tuple(at, piece).map(
    ([where, by]): Change =>
      (text) =>
        text.slice(0, where) + by + text.slice(where),
  ),
  fc.tuple(at, fc.nat({ max: 12 })).map(
    ([where, length]): Change =>
      (text) =>
        text.slice(0, where) + text.slice(where + length),
  ),
  fc.tuple(line, line).map(
    ([from, to]): Change =>
      (text) => {
        const lines = text.split('\n');
        lines.splice(to, 0, lines[from % lines.length] ?? '');
        return lines.join('\n');
      },
  ),
  line.map(
    (which): Change =>
      (text) =>
        text.split('\n').toSpliced(which, 1).join('\n'),
  ),
  fc.tuple(line, piece).map(
    ([which, by]): Change =>
      (text) =>
        text
          .split('\n')
          .map((each, index) => (index === which ? each.replace(/: .*/, `: ${by}`) : each))
          .join('\n'),
  ),
);

const mutated = fc
  .array(change, { minLength: 1, maxLength: 4 })
  .map((changes) => changes.reduce((text, apply) => apply(text), PLAIN));

describe('a program file that went wrong', () => {
  test('is read, or every problem has its place in the file and says something', () => {
    let refused = 0;
    fc.assert(
      fc.property(mutated, (text) => {
        const read = readProgram(text, 'plan.yaml');
        if (read.ok) return;
        refused += 1;
        const lines = text.split(/\r?\n/).length;
        expect(read.problems.length).toBeGreaterThan(0);
        for (const { what, line, column } of read.problems) {
          expect(what).toMatch(/^\S.*[.?]$/s);
          expect(what).not.toMatch(/undefined|\[object|NaN|Error/);
          expect(line).toBeGreaterThanOrEqual(1);
          expect(line).toBeLessThanOrEqual(lines);
          expect(column).toBeGreaterThanOrEqual(1);
        }
      }),
      { numRuns: Number(process.env.MUTATIONS ?? 500) },
    );
    expect(refused).toBeGreaterThan(100);
  }, 120_000);

  test('is never more than a text that nobody wrote', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200, unit: 'binary' }), (text) => {
        readProgram(text, 'plan.yaml');
      }),
      { numRuns: 200 },
    );
  });
});
