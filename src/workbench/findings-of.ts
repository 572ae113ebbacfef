import { checkProgram, type Finding } from '../program/check/check-program.ts';
import type { Program } from '../program/program.ts';
import type { Gear } from '../training/gear.ts';
import { reasonWords } from './reason-words.ts';

/** A finding of the check, ready to read. */
export interface FindingWords extends Finding {
  readonly text: string;
  /** Citation, or `common practice`, or `ours`. */
  readonly source: string;
}

/** What the check says of a program, in the order of the file. */
export function findingsOf(program: Program, gear: Gear): readonly FindingWords[] {
  return checkProgram(program, gear).map((finding) => {
    const { text, source } = reasonWords(finding, program.unit);
    return { ...finding, text, source };
  });
}
