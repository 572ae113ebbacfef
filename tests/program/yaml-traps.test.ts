import { describe, expect, test } from 'vitest';
import { fileProblemText } from '../../src/program/file-problem.ts';
import { readProgram } from '../../src/program/read-program.ts';
import { PLAIN, withChange } from './program-text.ts';

const problemsOf = (text: string): string[] => {
  const read = readProgram(text, 'plan.yaml');
  return read.ok ? [] : read.problems.map(fileProblemText);
};

describe('what another editor or system leaves in a file does no harm', () => {
  const plain = readProgram(PLAIN, 'plan.yaml');

  test('a byte order mark', () => {
    expect(readProgram(`\ufeff${PLAIN}`, 'plan.yaml')).toEqual(plain);
  });

  test('carriage returns before the line ends', () => {
    expect(readProgram(PLAIN.replaceAll('\n', '\r\n'), 'plan.yaml')).toEqual(plain);
  });

  test('no line end at the end', () => {
    expect(readProgram(PLAIN.trimEnd(), 'plan.yaml')).toEqual(plain);
  });
});

describe('what YAML can do and a program does not need is refused at its place', () => {
  test.each([
    ['an alias', withChange('rest: 3-5 min', 'rest: &r 3-5 min\n        note: *r'), ':12:15: '],
    [
      'an anchor and a merge key',
      withChange('start: 8\n', 'start: 8\n        <<: { sets: 3 }\n'),
      ':17:9: ',
    ],
    ['a tag', withChange('start: 80', 'start: !!str 80'), ':13:'],
    ['a tag of one’s own', withChange('start: 80', 'start: !load 80'), ':13:'],
    ['a tag that makes bytes', withChange('Lean spring', '!!binary aGk='), ':1:'],
    [
      'a key twice',
      withChange('sets: 3', 'sets: 3\n        sets: 4'),
      ':10:9: This key stands twice',
    ],
    [
      'a tab as indentation',
      withChange('        sets: 3', '\t\tsets: 3'),
      ':9:1: The line is indented with a tab.',
    ],
    ['a second document', `${PLAIN}---\nname: Other\n`, ':31:1: A second document begins here.'],
    ['another version of YAML', `%YAML 1.1\n---\n${PLAIN}`, ':1:1: The line begins with %'],
    [
      'a list as a key',
      withChange('unit: kg', '? [unit]\n: kg'),
      ':2:3: This key is not a plain word.',
    ],
    [
      'a missing space after a colon',
      withChange('unit: kg', 'unit:kg'),
      ':2:1: There is no space after the colon of "unit".',
    ],
    [
      'the same in a list',
      withChange('- lift: back-squat', '- lift:back-squat'),
      ':8:9: There is no space after the colon of "lift".',
    ],
    ['an open quote', withChange('Lean spring', '"Lean spring'), ':'],
    ['an open bracket', withChange('most_sets: 5 }', 'most_sets: 5'), ':'],
    ['a line out of step', withChange('        sets: 3', '         sets: 3'), ':'],
    [
      'a value that begins with @',
      withChange('Lean spring', '@home'),
      ':1:7: A value cannot begin with this',
    ],
    [
      'a control character',
      withChange('Lean', 'Le\u0007an'),
      ':1:9: There is a character here that cannot be seen: U+0007.',
    ],
    ['an escape sequence', withChange('Lean', '\u001b[31mLean'), ':1:7: There is a character'],
    [
      'a control character written as an escape',
      withChange('Lean spring', '"Lean\\u0007"'),
      ':1:7: The text holds a character that cannot be seen: U+0007.',
    ],
    ['a mark that turns text around', withChange('Lean', 'Le\u202ean'), 'U+202E'],
    ['half of a surrogate pair', withChange('Lean', 'Le\ud800an'), 'U+D800'],
    ['a carriage return within a line', withChange('unit: kg\n', 'unit: kg\r'), 'U+000D'],
    ['a null', withChange('Lean', '\0'), 'U+0000'],
    [
      'lists within lists',
      withChange('start: 80', `start: ${'['.repeat(50)}${']'.repeat(50)}`),
      'nested too deeply',
    ],
    ['steps within steps', `${PLAIN}${' '.repeat(150)}note: x\n`, 'nested too deeply'],
    ['an empty file', '', ':1:1: There is no program in this file: it is empty.'],
    ['only a comment', '# nothing yet\n', ':1:1: There is no program in this file: it is empty.'],
    ['only a line of dashes', '---\n', 'it is empty'],
    [
      'a key named like an inside of JavaScript',
      withChange('unit: kg', 'unit: kg\n__proto__: { aim: cut }'),
      '"__proto__" is not a key',
    ],
  ])('%s', (_, text, said) => {
    expect(problemsOf(text).join('\n')).toContain(said);
  });

  test('ten megabytes, without reading them all', () => {
    expect(problemsOf(`${PLAIN}#${'x'.repeat(10_000_000)}`)).toEqual([
      'plan.yaml:1:1: The file is 9767 kB long. A program is a page or two, 256 kB at most: is this the right file?',
    ]);
  });

  // A parser that recurses ends the process on these; the texts are just under the limit of size.
  test.each(['[', '{a: ', '- ', '? ', '-\t', 'a: ', '"'])(
    'a quarter of a megabyte of %j',
    (piece) => {
      const problems = problemsOf(piece.repeat(Math.floor(262_000 / piece.length)));
      expect(problems.length).toBeGreaterThan(0);
      expect(problems.length).toBeLessThanOrEqual(20);
    },
    30_000,
  );
});

describe('words and numbers that other versions of YAML read differently', () => {
  test('no is the word no', () => {
    const read = readProgram(withChange('Lean spring', 'no'), 'plan.yaml');
    expect(read.ok && read.program.name).toBe('no');
  });

  test('012 is twelve, and said to be', () => {
    const read = readProgram(withChange('start: 80', 'start: 012'), 'plan.yaml');
    expect(read.ok && read.warnings.map(fileProblemText)).toEqual([
      'plan.yaml:13:16: 012 is read as the number 12. Write 12 if that is meant.',
    ]);
  });

  test('1:30 is neither ninety nor a rest', () => {
    expect(problemsOf(withChange('rest: 3-5 min', 'rest: 1:30')).join()).toContain('Write 90 s.');
  });
});

test.each([
  ['\u0007', 'U+0007'],
  ['\u202e', 'U+202E'],
  ['\u200b', 'U+200B'],
])('a character that cannot be seen is named where it stands: %j', (character, name) => {
  const [problem = ''] = problemsOf(withChange('Lean spring', `Lean ${character}spring`));
  expect(problem).toContain(`:1:12: There is a character here that cannot be seen: ${name}.`);
});

test('what joins the signs of one picture, or letters of a script that has such, is none of these', () => {
  const named = (name: string) => readProgram(`name: ${name}\n`, 'p.yaml');
  const unseen = (name: string) => JSON.stringify(named(name)).includes('cannot be seen');
  expect(unseen('\u{1f3cb}\u{1f3fd}\u200d\u2640\ufe0f')).toBe(false);
  expect(unseen('\u0645\u06cc\u200c\u062f\u0648')).toBe(false);
  expect(unseen('A\u200dB')).toBe(true);
  expect(unseen('\u0645\u200d')).toBe(true);
});
