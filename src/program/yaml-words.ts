import type { ErrorCode } from 'yaml';
import type { Problem } from '../text/problem.ts';

/** A colon without its blank, as in `reps:5-8`. */
const GLUED = /^\s*(?:- +)*([A-Za-z_-]+):(?=[^\s:])/;

/** Mistakes that stay in their own line; any other makes the parser lose its way behind it. */
const OF_ONE_LINE: ReadonlySet<ErrorCode> = new Set([
  'DUPLICATE_KEY',
  'BAD_ALIAS',
  'BAD_SCALAR_START',
  'NON_STRING_KEY',
  'TAG_RESOLVE_FAILED',
]);

/** Are complaints about later lines worth nothing, because of this one? */
export const losesTheWay = (code: ErrorCode, line: string): boolean =>
  !OF_ONE_LINE.has(code) && !GLUED.test(line);

/** What a YAML error means to someone who writes a plan, and not a parser. */
export function yamlWords(code: ErrorCode, line: string): Problem {
  const glued = GLUED.exec(line);
  if (glued && (code === 'MULTILINE_IMPLICIT_KEY' || code === 'MISSING_CHAR')) {
    return {
      what: `There is no space after the colon of "${glued[1]}".`,
      fix: `Write "${glued[1]}: " with a space behind the colon.`,
    };
  }
  return WORDS[code] ?? UNFIT;
}

const UNFIT: Problem = {
  what: 'This line does not fit the lines around it.',
  fix: 'Check its indentation, and that every bracket and quote is closed where it should be.',
};

const WORDS: Partial<Record<ErrorCode, Problem>> = {
  TAB_AS_INDENT: {
    what: 'The line is indented with a tab.',
    fix: 'YAML wants spaces: two for each step.',
  },
  DUPLICATE_KEY: {
    what: 'This key stands twice in the same place.',
    fix: 'Keep one of the two.',
  },
  MULTIPLE_DOCS: {
    what: 'A second document begins here.',
    fix: 'Keep one program a file, without a line of three dashes in the middle.',
  },
  MULTILINE_IMPLICIT_KEY: {
    what: 'The text here does not read as a key and its value.',
    fix: 'Write "key: value" on one line, and check the indentation of this line and the next.',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    what: 'There is a second colon, or a deeper line, where a value should stand.',
    fix: 'Check the indentation here, and put text that holds ": " in quotes.',
  },
  BAD_INDENT: {
    what: 'The indentation does not fit the lines around it, or a bracket is left open.',
    fix: 'Line it up with its neighbours, two spaces for each step, and close every bracket.',
  },
  BAD_ALIAS: {
    what: 'The text begins with * or &, which have a meaning of their own in YAML.',
    fix: 'Put it in quotes.',
  },
  BAD_SCALAR_START: {
    what: 'A value cannot begin with this character.',
    fix: 'Put the value in quotes.',
  },
  NON_STRING_KEY: {
    what: 'This key is not a plain word.',
    fix: 'Write the key as one word, such as "reps".',
  },
  TAG_RESOLVE_FAILED: {
    what: 'The text begins with !, which has a meaning of its own in YAML.',
    fix: 'Put it in quotes.',
  },
  RESOURCE_EXHAUSTION: {
    what: 'Keys and lists are nested too deeply here.',
    fix: 'A program needs days, their exercises, and the keys of an exercise: nothing deeper.',
  },
};
