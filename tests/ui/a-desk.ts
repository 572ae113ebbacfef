import type { ProgramDesk } from '../../src/workbench/program-desk.ts';

const nothing = (): never => {
  throw new Error('This scene has no program file.');
};

/** A program file without a finding that nobody looks at; a test gives what it needs of it. */
export function emptyDesk(given: Partial<ProgramDesk> = {}): ProgramDesk {
  return {
    findings: () => [],
    open: () => ({ what: 'This scene has no program file.' }),
    edit: nothing,
    lifts: nothing,
    changes: nothing,
    save: nothing,
    ...given,
  };
}
