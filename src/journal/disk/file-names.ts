import { basename, dirname, join } from 'node:path';
import type { JournalFile } from '../lines.ts';

/** A journal file with what is needed to go on writing to it. */
export interface FileOnDisk extends JournalFile {
  readonly path: string;
  /** Bytes up to the end of the last whole line. */
  readonly wholeBytes: number;
}

export const JOURNAL_FOLDER = 'journal';

const NAME = /^(\d{4}-\d\d-\d\d)-([0-9a-z]+)-([0-9a-z]+)\.jsonl$/;

export interface JournalFileName {
  /** Local day on which the file was made. */
  readonly day: string;
  readonly device: string;
  /** Fresh and random: the file's own id. */
  readonly id: string;
}

/** Path below the data folder: `journal/2026-11/2026-11-25-k3f9ab-q7x2m5c8da.jsonl`. */
export const pathOf = ({ day, device, id }: JournalFileName): string =>
  join(JOURNAL_FOLDER, day.slice(0, 7), `${day}-${device}-${id}.jsonl`);

/** What a file's name tells; null for one that no device of ours gave. */
export function readName(path: string): JournalFileName | null {
  const found = NAME.exec(basename(path));
  return found ? { day: found[1] ?? '', device: found[2] ?? '', id: found[3] ?? '' } : null;
}

/** Month of a file, by its path below the data folder. */
export const monthOf = (name: string): string => basename(dirname(name));
