import { describe, expect, it } from 'vitest';
import { speechProgram, spokenNumber } from '../../src/terminal/speech.ts';

describe('numbers as a gym partner calls them', () => {
  it.each([
    [0, 'zero'],
    [3, 'three'],
    [13, 'thirteen'],
    [20, 'twenty'],
    [72.5, 'seventy-two and a half'],
    [81.25, 'eighty-one and a quarter'],
    [0.75, 'three quarters'],
    [0.5, 'half'],
    [102.5, 'one hundred two and a half'],
    [115, 'one hundred fifteen'],
    [300, 'three hundred'],
    [19, 'nineteen'],
    [99, 'ninety-nine'],
    [100, 'one hundred'],
    [999, 'nine hundred ninety-nine'],
    [1000, '1000'],
    [-1000, '-1000'],
    [60.12345, 'sixty point one two three'],
    [20.4, 'twenty point four'],
    [20.412, 'twenty point four one two'],
    [-10, 'minus ten'],
    [1200, '1200'],
  ])('%d', (amount, wanted) => expect(spokenNumber(amount)).toBe(wanted));
});

describe('the speech program', () => {
  const all = () => true;

  it.each([
    ['darwin', 'say'],
    ['linux', 'spd-say'],
    ['win32', 'powershell.exe'],
  ] as const)('of %s is %s', (platform, command) => {
    expect(speechProgram(platform, all)?.command).toBe(command);
  });

  it('is the next one where the first is missing, and none where all are', () => {
    expect(speechProgram('linux', (name) => name === 'espeak')?.command).toBe('espeak');
    expect(speechProgram('linux', () => false)).toBeNull();
    expect(speechProgram('sunos', all)).toBeNull();
  });

  it.each(['darwin', 'linux', 'win32'] as const)(
    'of %s gets the words as one argument of its own',
    (platform) => {
      const words = "$(rm -rf /); 'quoted' & --flag";
      expect(speechProgram(platform, all)?.args(words).at(-1)).toBe(words);
    },
  );
});
