import type { Settings } from '../settings/settings.ts';

/** A setting as the lifter reads and writes it. */
export interface SettingRow {
  readonly name: string;
  readonly does: string;
  /** What may be written; a switch has yes and no. */
  readonly values: readonly string[];
  readonly read: (settings: Settings) => string;
  /** @param value one of `values` */
  readonly change: (value: string) => Partial<Settings>;
}

type Switch = {
  [Key in keyof Settings]: Settings[Key] extends boolean ? Key : never;
}[keyof Settings];
type Word = 'theme' | 'spoken' | 'cautions' | 'weightAdvice';

const onOrOff = (key: Switch, does: string): SettingRow => ({
  name: key,
  does,
  values: ['yes', 'no'],
  read: (settings) => (settings[key] ? 'yes' : 'no'),
  change: (value) => ({ [key]: value === 'yes' }),
});

const word = <Key extends Word>(
  name: string,
  key: Key,
  does: string,
  values: readonly Settings[Key][],
): SettingRow => ({
  name,
  does,
  values,
  read: (settings) => settings[key],
  change: (value) => ({ [key]: value }),
});

/** Every setting that is changed by its name. What the lifter owns is changed by `gear`. */
export const SETTING_ROWS: readonly SettingRow[] = [
  onOrOff('bell', 'rings at both ends of a rest'),
  onOrOff('flash', 'flashes the screen then, too'),
  onOrOff('speech', 'speaks, where this machine can'),
  word('spoken', 'spoken', 'sentences, or the load alone', ['full', 'few']),
  onOrOff('notification', 'notifies the desktop'),
  onOrOff('taps', 'taps work; selecting needs shift'),
  word('theme', 'theme', 'marks and lines in colour, or plain', ['colour', 'plain']),
  word('weight-advice', 'weightAdvice', 'speaks of how fast to lose weight', ['yes', 'no', 'ask']),
  word('cautions', 'cautions', 'shown before a session while unread', [
    'unread',
    'read',
    'doctor-first',
  ]),
];
