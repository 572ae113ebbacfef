/** A program that speaks, with the words as one of its arguments; never through a shell. */
export interface SpeechProgram {
  readonly command: string;
  readonly args: (words: string) => readonly string[];
}

// The words are data for PowerShell too: they go in as an argument and are never part of the script.
const SAPI =
  'Add-Type -AssemblyName System.Speech; (New-Object System.Speech.Synthesis.SpeechSynthesizer).Speak($args[0])';

const PROGRAMS: Readonly<Partial<Record<NodeJS.Platform, readonly SpeechProgram[]>>> = {
  darwin: [{ command: 'say', args: (words) => ['--', words] }],
  linux: [
    { command: 'spd-say', args: (words) => ['--', words] },
    { command: 'espeak-ng', args: (words) => ['--', words] },
    { command: 'espeak', args: (words) => ['--', words] },
  ],
  android: [{ command: 'termux-tts-speak', args: (words) => [words] }],
  win32: [
    {
      command: 'powershell.exe',
      args: (words) => ['-NoProfile', '-NonInteractive', '-Command', `& {${SAPI}}`, words],
    },
  ],
};

/**
 * The platform's speech program: the first in its table that `has` finds on the search path. Null
 * where there is none.
 */
export function speechProgram(
  platform: NodeJS.Platform,
  has: (command: string) => boolean,
): SpeechProgram | null {
  return (PROGRAMS[platform] ?? []).find(({ command }) => has(command)) ?? null;
}

const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'zero ten twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const PARTS: Readonly<Record<string, string>> = {
  '25': ' and a quarter',
  '5': ' and a half',
  '75': ' and three quarters',
};

/**
 * A number as a gym partner would call it: 72.5 is `seventy-two and a half`. Other decimals are
 * spoken digit by digit, and numbers of 1000 and more are left to the speech program as they are.
 */
export function spokenNumber(amount: number): string {
  if (!Number.isFinite(amount) || Math.abs(amount) >= 1000) return String(amount);
  if (amount < 0) return `minus ${spokenNumber(-amount)}`;
  const [whole = '0', part] = String(Number(amount.toFixed(3))).split('.');
  const words = spokenWhole(Number(whole));
  if (part === undefined) return words;
  if (PARTS[part])
    return whole === '0' ? PARTS[part].replace(/^ and (an? )?/, '') : words + PARTS[part];
  return `${words} point ${[...part].map((digit) => ONES[Number(digit)]).join(' ')}`;
}

function spokenWhole(whole: number): string {
  if (whole < 20) return ONES[whole] ?? '';
  if (whole < 100) {
    const tens = TENS[Math.floor(whole / 10)] ?? '';
    return whole % 10 === 0 ? tens : `${tens}-${ONES[whole % 10]}`;
  }
  const hundreds = `${ONES[Math.floor(whole / 100)]} hundred`;
  return whole % 100 === 0 ? hundreds : `${hundreds} ${spokenWhole(whole % 100)}`;
}
