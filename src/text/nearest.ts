/**
 * The known name that was most likely meant: the one with the fewest letters to change, add, drop
 * or swap, if those are at most a third of its length, one of two letters. Null when nothing is near.
 */
export function nearestKey(found: string, known: Iterable<string>): string | null {
  let nearest: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const name of known) {
    const most = name.length < 2 ? 0 : Math.max(1, Math.floor(name.length / 3));
    // Letters too many have to go one by one; of a text of 100,000 the table would take seconds.
    if (Math.abs(found.length - name.length) > most) continue;
    const edits = editsBetween(plain(found), plain(name));
    if (edits < least && edits <= most) {
      nearest = name;
      least = edits;
    }
  }
  return nearest;
}

/** Case and the way words are joined are never what was got wrong. */
const plain = (name: string): string => name.toLowerCase().replace(/[\s_]+/g, '-');

/** Edits between two words, neighbours swapped counting as one (optimal string alignment). */
function editsBetween(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const here = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const change = a[row - 1] === b[column - 1] ? 0 : 1;
      let edits = Math.min(above[column]! + 1, here[column - 1]! + 1, above[column - 1]! + change);
      const swapped = a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) edits = Math.min(edits, before[column - 2]! + 1);
      here.push(edits);
    }
    [before, above] = [above, here];
  }
  return above[b.length]!;
}
