import type { SessionCommand } from '../session/command.ts';
import { draftNumbers } from './entry.ts';
import { draftOf } from './outcome.ts';
import type { Model } from './ui-state.ts';

/**
 * Amends the set that the draft names with what was typed; no command where nothing was, and the
 * sentence where it cannot be read.
 */
export function typedCommands(model: Model): readonly SessionCommand[] | string {
  const draft = draftOf(model);
  const numbers = draftNumbers(draft, model.session?.prescription.unit ?? 'kg');
  if (typeof numbers === 'string') return numbers;
  const of = draft?.of;
  return numbers && of ? [{ do: 'amend', of, numbers }] : [];
}
