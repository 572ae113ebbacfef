/** A value that could not be read: what was found, and what to write in its place. */
export class Wrong {
  readonly what: string;
  readonly fix: string;

  constructor(what: string, fix: string) {
    this.what = what;
    this.fix = fix;
  }
}

const LONGEST = 40;

/** A value out of a file as it may stand in a sentence: short, on one line. */
export function shown(found: unknown): string {
  if (found === undefined || found === null) return 'nothing';
  if (Array.isArray(found)) return 'a list';
  if (typeof found === 'object') return 'a group of keys';
  if (typeof found === 'number' && !Number.isFinite(found)) return 'what is no number';
  if (typeof found !== 'string') return String(found);
  const line = found.replace(/\s+/g, ' ');
  return `"${line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line}"`;
}
