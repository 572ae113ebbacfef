import type { Problem } from '../text/problem.ts';
import { readEvent } from './read-event.ts';
import type { JournalEvent } from './records.ts';

/** The version that this program writes; a line of a newer one is kept and skipped. */
export const LINE_VERSION = 1;

/** CRC-32 (ISO 3309, as in zlib) of bytes, as an unsigned number. */
export type Crc32 = (bytes: Uint8Array) => number;

/** One line of a journal file as it was read. */
export type JournalLine =
  | { readonly kind: 'event'; readonly event: JournalEvent }
  /** Whole, but of a newer version or of a kind that is not known. `names`: ids that it speaks of. */
  | { readonly kind: 'newer'; readonly id: string; readonly names: readonly string[] }
  | { readonly kind: 'damaged' };

const DAMAGED: JournalLine = { kind: 'damaged' };
const CHECK_DIGITS = 8;
const SPACE = 0x20;
const CARRIAGE_RETURN = 0x0d;

const encoder = new TextEncoder();
const HEX_DIGITS = encoder.encode('0123456789abcdef');
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/**
 * One event as a line: 8 hex digits of the CRC-32 of the JSON text's UTF-8 bytes, a space, the JSON
 * text, a newline.
 */
export function encodeLine(event: JournalEvent, crc32: Crc32): Uint8Array {
  const { id, at, zone, type, ...rest } = event;
  const text = JSON.stringify({
    v: LINE_VERSION,
    seq: sequenceOf(id),
    id,
    at,
    zone,
    type,
    ...rest,
  });
  const check = crc32(encoder.encode(text)).toString(16).padStart(CHECK_DIGITS, '0');
  return encoder.encode(`${check} ${text}\n`);
}

/** Reads one line, given without its newline; a carriage return at its end is ignored. */
export function decodeLine(line: Uint8Array, crc32: Crc32): JournalLine {
  const end = line.at(-1) === CARRIAGE_RETURN ? line.length - 1 : line.length;
  const json = line.subarray(CHECK_DIGITS + 1, end);
  if (line[CHECK_DIGITS] !== SPACE || readCheck(line) !== crc32(json)) return DAMAGED;
  let written: Written;
  try {
    written = parsed(decoder.decode(json));
  } catch {
    // The check value was right, so this was written so; no version of holdfast does that.
    return DAMAGED;
  }
  return readLine(written);
}

/** Version and sequence number of a line, and the event as it is kept: without the two. */
interface Written {
  readonly v: unknown;
  readonly seq: unknown;
  readonly event: Readonly<Record<string, unknown>>;
}

const HEAD = /^\{"v":(\d+),"seq":(\d+),/;

function parsed(text: string): Written {
  const head = HEAD.exec(text);
  if (head) {
    // Left out of the text; taking them out of the parsed object would copy every event of years.
    const event = JSON.parse(`{${text.slice(head[0].length)}`);
    return { v: Number(head[1]), seq: Number(head[2]), event };
  }
  const { v, seq, ...event } = JSON.parse(text) ?? {};
  return { v, seq, event };
}

function readLine({ v, seq, event }: Written): JournalLine {
  const { id } = event;
  if (typeof v !== 'number' || typeof id !== 'string' || sequenceOf(id) !== seq) return DAMAGED;
  const known = v === LINE_VERSION ? readEvent(event) : null;
  return known ? { kind: 'event', event: known } : { kind: 'newer', id, names: namesIn(event) };
}

/** The check value at the start of a line; null where there are no lower-case hex digits. */
function readCheck(line: Uint8Array): number | null {
  let check = 0;
  for (let at = 0; at < CHECK_DIGITS; at += 1) {
    const digit = HEX_DIGITS.indexOf(line[at] ?? 0);
    if (digit < 0) return null;
    check = check * HEX_DIGITS.length + digit;
  }
  return check;
}

function namesIn({ of, session }: Record<string, unknown>): string[] {
  return [of, session].flat().filter((name) => typeof name === 'string');
}

/** Id of the file that an event was first written to. */
export const fileOf = (id: string): string => id.slice(0, id.lastIndexOf(':'));

/** Place of an event in its file, from 0; NaN where the id carries none. */
export const sequenceOf = (id: string): number =>
  id.includes(':') ? Number(id.slice(id.lastIndexOf(':') + 1)) : Number.NaN;

const NEWLINE = 0x0a;
const BYTE_ORDER_MARK = [0xef, 0xbb, 0xbf];

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
  // An editor that saved the file may have put a mark in front of it.
  let start = BYTE_ORDER_MARK.every((byte, at) => bytes[at] === byte) ? BYTE_ORDER_MARK.length : 0;
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

/** A journal file as it was read from disk. */
export interface JournalFile {
  /** Path below the journal's folder, for the lifter's eye. */
  readonly name: string;
  /** Made by this device. */
  readonly own: boolean;
  /** Lines up to the last whole one. */
  readonly lines: readonly JournalLine[];
  /** Lines behind the last whole one: a write was cut short. */
  readonly tail: number;
  /** Why nothing of it could be read. */
  readonly trouble?: Problem;
}

/** Something in the journal that could not be read, or was written by a newer version. */
export interface Damage {
  readonly file: string;
  readonly kind:
    | 'tail'
    | 'damaged'
    | 'missing'
    | 'newer'
    | 'no-opening'
    | 'unreadable'
    | 'conflict';
  readonly problem: Problem;
}
