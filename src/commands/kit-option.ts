import type { Call } from './call.ts';

/** The name of a kit given by `--kit`, or null. */
export const kitOption = ({ options }: Call): string | null =>
  typeof options.kit === 'string' ? options.kit : null;
