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
