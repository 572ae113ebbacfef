import { createHash } from 'node:crypto';
import type { Files } from './files.ts';

/** Names a data folder among the files of this machine: the same by whatever path it is reached. */
export const dataKey = (files: Files, dataDir: string): string =>
  createHash('sha256').update(files.realPath(dataDir)).digest('hex').slice(0, 16);
