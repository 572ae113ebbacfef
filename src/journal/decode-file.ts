import { type Crc32, decodeLine, type JournalLine } from './line-codec.ts';

const NEWLINE = 0x0a;

export interface DecodedFile {
  readonly lines: readonly JournalLine[];
  /** Bytes up to the end of the last whole line; what follows may be cut off. */
  readonly wholeBytes: number;
  /** Lines behind that: damaged ones, and one without its newline. */
  readonly tail: number;
}

/** Reads a journal file, tolerant of a half-written end. Lines of the tail are left out. */
export function decodeFile(bytes: Uint8Array, crc32: Crc32): DecodedFile {
  const lines: JournalLine[] = [];
  let start = 0;
  let wholeBytes = 0;
  let wholeLines = 0;
  for (let end = bytes.indexOf(NEWLINE); end >= 0; end = bytes.indexOf(NEWLINE, start)) {
    const line = decodeLine(bytes.subarray(start, end), crc32);
    lines.push(line);
    start = end + 1;
    if (line.kind === 'damaged') continue;
    wholeBytes = start;
    wholeLines = lines.length;
  }
  const unended = start < bytes.length ? 1 : 0;
  return {
    lines: lines.slice(0, wholeLines),
    wholeBytes,
    tail: lines.length - wholeLines + unended,
  };
}
