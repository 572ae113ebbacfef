/** A line of a change: as it was, as it will be, the same in both, or some that are left out. */
export interface DiffLine {
  readonly kind: 'gone' | 'new' | 'same' | 'left-out';
  readonly text: string;
}

/** Lines shown around each change. */
const AROUND = 2;

/** What changes from one text to another, line by line, with two lines around each change. */
export function lineDiff(before: string, after: string): DiffLine[] {
  const [old, next] = [before.split('\n'), after.split('\n')];
  const lines = aligned(old, next, longestCommon(old, next));
  const isNear = lines.map((_, at) =>
    lines.slice(Math.max(0, at - AROUND), at + AROUND + 1).some(({ kind }) => kind !== 'same'),
  );
  return lines.flatMap((line, at): DiffLine[] => {
    if (isNear[at]) return [line];
    // One line stands for all that are left out in a row, between changes only.
    const isBetween = isNear[at - 1] && isNear.includes(true, at);
    return isBetween ? [{ kind: 'left-out', text: '' }] : [];
  });
}

/** Length of the longest common subsequence of the lines from each place on. */
function longestCommon(old: readonly string[], next: readonly string[]): readonly Uint32Array[] {
  const table = Array.from({ length: old.length + 1 }, () => new Uint32Array(next.length + 1));
  for (let i = old.length - 1; i >= 0; i -= 1) {
    const [row, below] = [table[i] as Uint32Array, table[i + 1] as Uint32Array];
    for (let j = next.length - 1; j >= 0; j -= 1) {
      row[j] =
        old[i] === next[j] ? (below[j + 1] ?? 0) + 1 : Math.max(below[j] ?? 0, row[j + 1] ?? 0);
    }
  }
  return table;
}

function aligned(
  old: readonly string[],
  next: readonly string[],
  common: readonly Uint32Array[],
): DiffLine[] {
  const lines: DiffLine[] = [];
  const at = (i: number, j: number) => (common[i] as Uint32Array)[j] ?? 0;
  let [i, j] = [0, 0];
  while (i < old.length || j < next.length) {
    const [gone, added] = [old[i], next[j]];
    if (gone !== undefined && gone === added) {
      lines.push({ kind: 'same', text: gone });
      i += 1;
      j += 1;
    } else if (gone !== undefined && (added === undefined || at(i + 1, j) >= at(i, j + 1))) {
      lines.push({ kind: 'gone', text: gone });
      i += 1;
    } else {
      lines.push({ kind: 'new', text: added ?? '' });
      j += 1;
    }
  }
  return lines;
}
