import { KITS } from '../training/kits.ts';
import type { OptionRow } from './call.ts';

/** `1 body weight and bands, 2 …`. */
export const KIT_LIST = KITS.map(({ name }, at) => `${at + 1} ${name}`).join('; ');

const KIT_WORDS = `what you own, kept as your gear: ${KIT_LIST}`;

/** What a draft can be told without being asked. */
export const DRAFT_OPTIONS: readonly OptionRow[] = [
  { flags: '--days <count>', does: 'days a week, 2 to 4; 3 by default' },
  { flags: '--minutes <count>', does: 'minutes a session at most; 60 by default' },
  { flags: '--aim <aim>', does: 'cut, maintain or build; cut by default' },
  { flags: '--kit <number>', does: KIT_WORDS },
  { flags: '--like <lifts...>', does: 'lifts that should be in it' },
  { flags: '--without <lifts...>', does: 'lifts that you cannot or will not do' },
  {
    flags: '--hurts <joints...>',
    does: 'joints to spare: shoulder, elbow, wrist, back, hip, knee',
  },
  {
    flags: '--focus <muscles...>',
    does: 'muscles to bring up: side-delts, or legs, arms, back, shoulders',
  },
  {
    flags: '--best <bests...>',
    does: 'what you did lately: "back-squat=100kg for 5 leaving 2", reps in reserve last',
  },
  {
    flags: '--unit <unit>',
    does: "kg or lb; your gear's by default; a program that is changed keeps its own",
  },
  { flags: '--name <name>', does: 'what the program is called' },
  { flags: '--from <program>', does: 'change this program, and keep what you wrote in it' },
  { flags: '--out <file>', does: 'file to write; by default one among your programs' },
  { flags: '--replace', does: 'replace that file if it is there' },
  { flags: '--print', does: 'print the program in place of writing it' },
  { flags: '--use', does: 'make it the program in use' },
];
