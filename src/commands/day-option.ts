import type { Call } from './call.ts';

/** The day named by `--day`, or null. */
export const dayOption = ({ options }: Call): string | null =>
  typeof options.day === 'string' ? options.day : null;
