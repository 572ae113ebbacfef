import type { Call } from './call.ts';
import { wholeNumber } from './whole-number.ts';

/** Minutes given by `--minutes`, or null. @throws Refusal unless it is a whole number from 10 to 180. */
export const minutesOption = ({ options }: Call): number | null =>
  typeof options.minutes === 'string' ? wholeNumber(options.minutes, '--minutes', 10, 180) : null;
