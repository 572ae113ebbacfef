import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DiffLine, lineDiff } from '../../src/text/line-diff.ts';

const shown = (lines: readonly DiffLine[]) =>
  lines.map(({ kind, text }) => ({ gone: '-', new: '+', same: ' ', 'left-out': '…' })[kind] + text);

describe('a change shown line by line', () => {
  it('shows the line that changes, and two around it', () => {
    const before = 'a\nb\nc\nsets: 3\nd\ne\nf';
    expect(shown(lineDiff(before, before.replace('3', '2')))).toEqual([
      ' b',
      ' c',
      '-sets: 3',
      '+sets: 2',
      ' d',
      ' e',
    ]);
  });

  it('leaves out what lies between two changes, and says so once', () => {
    const before = 'x\n1\n2\n3\n4\n5\n6\ny';
    const after = 'X\n1\n2\n3\n4\n5\n6\nY';
    expect(shown(lineDiff(before, after))).toEqual([
      '-x',
      '+X',
      ' 1',
      ' 2',
      '…',
      ' 5',
      ' 6',
      '-y',
      '+Y',
    ]);
  });

  it('shows nothing where nothing changes', () => {
    expect(lineDiff('a\nb', 'a\nb')).toEqual([]);
  });

  it('shows as many lines gone and new as the texts differ in length', () => {
    const text = fc.array(fc.constantFrom('a', 'b', 'c'), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(text, text, (old, next) => {
        const lines = lineDiff(old.join('\n'), next.join('\n'));
        const count = (kind: DiffLine['kind']) => lines.filter((one) => one.kind === kind).length;
        expect(count('new') - count('gone')).toBe(next.length - old.length);
      }),
      { numRuns: 200 },
    );
  });

  it('shows every line of both texts in order, and as few changed as can be', () => {
    const text = fc.array(fc.constantFrom('a', 'b', 'c'), { minLength: 1, maxLength: 5 });
    /** Longest common subsequence by trying every choice of lines. */
    const mostKept = ([line, ...rest]: string[], next: string[]): number => {
      if (line === undefined) return 0;
      const found = next.indexOf(line);
      const kept = found < 0 ? 0 : 1 + mostKept(rest, next.slice(found + 1));
      return Math.max(kept, mostKept(rest, next));
    };
    fc.assert(
      fc.property(text, text, (old, next) => {
        const lines = lineDiff(old.join('\n'), next.join('\n'));
        const without = (kind: DiffLine['kind']) =>
          lines.filter((one) => one.kind !== kind).map((one) => one.text);
        // So short a text leaves nothing out between two changes, and little at its ends.
        if (lines.some(({ kind }) => kind === 'left-out')) return;
        expect(old.join('\n')).toContain(without('new').join('\n'));
        expect(next.join('\n')).toContain(without('gone').join('\n'));
        const gone = lines.filter(({ kind }) => kind === 'gone').length;
        expect(gone).toBe(old.length - mostKept(old, next));
      }),
      { numRuns: 500 },
    );
  });
});
