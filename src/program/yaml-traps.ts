import { Lexer } from 'yaml';
import type { Problem } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import type { Place } from './program.ts';

export type PlacedProblem = Problem & Place;

/** A program on paper is one or two pages; this is far more. */
export const MOST_BYTES = 256 * 1024;
export const MOST_DEPTH = 20;
const MOST_INDENT = 100;
const MOST_REPORTED = 20;

/**
 * Joins the signs of one picture, and letters in Persian and the scripts of India: between two that are
 * not ASCII it belongs to what is seen. Screens leave it out.
 */
const JOINER = /(?<=[^\0-\x7f])[\u200c\u200d](?=[^\0-\x7f])/gu;

/** The first character that a screen cannot show, as `U+0007`; null when there is none. */
export function unsafeCharacter(
  text: string,
): { readonly name: string; readonly at: number } | null {
  const plain = text.replace(/[\t\n]/g, ' ').replace(JOINER, ' ');
  if (safeText(plain) === plain) return null;
  let at = 0;
  for (const character of plain) {
    if (safeText(character) !== character) {
      const code = character.codePointAt(0) ?? 0;
      return { name: `U+${code.toString(16).toUpperCase().padStart(4, '0')}`, at };
    }
    at += character.length;
  }
  return null;
}

/**
 * What must be refused before a YAML parser sees it: deep nesting can end the whole process (a
 * line of a hundred thousand `- ` does), and a `%YAML` directive changes what words mean.
 */
export function yamlTraps(text: string): readonly PlacedProblem[] {
  if (text.length > MOST_BYTES) {
    return [
      {
        line: 1,
        column: 1,
        what: `The file is ${Math.ceil(text.length / 1024)} kB long.`,
        fix: 'A program is a page or two, 256 kB at most: is this the right file?',
      },
    ];
  }
  const lines = text.split(/\r?\n/);
  const found = lines.flatMap((line, at) => trapsOfLine(line, at + 1)).slice(0, MOST_REPORTED);
  return found.length > 0 ? found : deepBrackets(text);
}

function trapsOfLine(text: string, line: number): PlacedProblem[] {
  const unsafe = unsafeCharacter(text);
  if (unsafe) {
    return [
      {
        line,
        column: unsafe.at + 1,
        what: `There is a character here that cannot be seen: ${unsafe.name}.`,
        fix: 'Delete it, or type the line again.',
      },
    ];
  }
  if (/^%/.test(text)) {
    return [
      {
        line,
        column: 1,
        what: 'The line begins with %, which sets another version of YAML.',
        fix: 'Delete this line: programs are read as YAML 1.2.',
      },
    ];
  }
  const indent = /^(?:[ \t]|[-?:](?=[ \t]))*/.exec(text)?.[0].length ?? 0;
  return indent > MOST_INDENT ? [tooDeep({ line, column: MOST_INDENT })] : [];
}

function deepBrackets(text: string): PlacedProblem[] {
  let depth = 0;
  let offset = 0;
  for (const lexeme of new Lexer().lex(text)) {
    if (lexeme === '[' || lexeme === '{') depth += 1;
    if (lexeme === ']' || lexeme === '}') depth -= 1;
    if (depth > MOST_DEPTH) return [tooDeep(placeAt(text, offset))];
    // The lexer marks documents and scalars by a control character that is not in the text.
    if (!/^[\x02\x18\x1f]$/.test(lexeme)) offset += lexeme.length;
  }
  return [];
}

export function tooDeep(place: Place): PlacedProblem {
  return {
    ...place,
    what: 'Keys and lists are nested too deeply here.',
    fix: 'A program needs days, their exercises, and the keys of an exercise: nothing deeper.',
  };
}

function placeAt(text: string, offset: number): Place {
  const before = text.slice(0, offset);
  const start = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: offset - start + 1 };
}
