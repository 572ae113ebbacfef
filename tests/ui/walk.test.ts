import { beforeAll, expect, it, vi } from 'vitest';
import { keysLeadTo } from './led-to.ts';
import { LAPTOP, PHONE, Player, WIDE } from './player.ts';
import { demoScene, type Scene } from './scene.ts';

vi.setConfig({ testTimeout: 60_000 });

/**
 * Every screen over twelve lived weeks, kept as text in `frames/walk/`: at three sizes, with boxes for
 * taps, as a screen reader says it, and what each of its keys leads to. From the preview by keys; what is typed is not taken.
 */
const WALKS: Readonly<Record<string, string>> = {
  preview: '',
  'preview-chosen': '<down><down>',
  'another-day': '<right>',
  why: 'w',
  'why-further': 'w<page-down>',
  'less-time': 'kk',
  review: 't',
  'review-further': 't<tab><page-down>',
  'review-why': 'tw',
  plan: 'tc',
  'plan-end': 'tc<up> ',
  goal: 'tc ',
  'goal-typed': 'tc 75<tab>2027-03-01',
  'weigh-in': 'i',
  'weigh-in-typed': 'i82.4',
  'weigh-in-doubted': 'i28.4<enter>',
  waist: 'i<tab>',
  'waist-typed': 'i<tab>86',
  readings: 'ih',
  'reading-corrected': 'ih<down>c',
  history: 'h',
  'history-searched': 'h/press',
  results: 'h<enter>',
  'past-session': 'h<enter><enter>',
  'past-session-set': 'h<enter><enter><down>',
  'past-set-corrected': 'h<enter><enter>c7',
  'past-set-deleted': 'h<enter><enter>d',
  program: 'e',
  'program-exercise': 'e<down>+-',
  'program-moved': 'e<down>v',
  'lift-added': 'ea',
  'lift-searched': 'earow',
  'program-looked-at': 'e<down>d<enter>',
  'program-unsaved': 'e<down>d<esc>',
  findings: 'ew',
  gear: 'o',
  'gear-changed': 'o<down><down><right>',
  'gear-added': 'oa',
  questions: 'ec',
  draft: 'ece',
  'draft-best': 'ece<left>',
  'best-asked': 'ece<left><down><enter>',
  'best-typed': 'ece<left><down><enter>100<tab>5',
  'whole-session': 'h<enter><enter><up><enter>',
  'findings-found': 'e<down>+w',
  'other-days': 'j<up> ',
  hurts: 'm',
  'hurts-marked': 'm<down><enter>',
  kits: 'j',
  settings: 'g',
  'settings-further': 'g<down><down>',
  help: '?',
  'help-further': '?<page-down>',
  'session-typed': ' s  7<tab>2',
  'session-typed-wrong': ' s  7.5.5<tab>123<tab>1.2.34567<backspace>',
  'session-offer': ' s  3<tab>0<enter>',
  'session-failed': ' s  z',
  'session-before': ' s  <enter> s b',
  'session-discard': ' sf<down><down> ',
  'session-undone': ' s  u',
  'session-nothing': ' s;+ry',
};

const SIZES = [
  ['34 × 16', PHONE],
  ['80 × 24', LAPTOP],
  ['120 × 40', WIDE],
] as const;

let over: Scene;
let byFinger: Scene;
beforeAll(() => {
  over = demoScene();
  byFinger = demoScene({ settings: { taps: true } });
});

it.each(Object.entries(WALKS))('%s', async (name, keys) => {
  // What keeps something has a lifter of its own.
  const keeps = keys.startsWith(' ') || keys.startsWith('ec') || name === 'hurts-marked';
  const [own, tapped] = keeps
    ? [demoScene(), demoScene({ settings: { taps: true } })]
    : [over, byFinger];
  const at = new Player(LAPTOP, { over: own }).keys(keys);
  // Before it is drawn at other sizes: a key moves by what is seen.
  const leadTo = keysLeadTo(at);
  const pictures = SIZES.map(([size, { columns, rows }]) => {
    at.store.resize({ columns, rows });
    return `At ${size}\n\n${at.screen()}`;
  });
  const finger = new Player(PHONE, { over: tapped }).keys(keys);
  const told = [
    ...pictures,
    `By taps at 34 × 16\n\n${finger.screen()}`,
    `Said\n\n${at.spoken().join('\n')}`,
    `What its keys lead to\n\n${leadTo.join('\n')}`,
  ];
  await expect(`${told.join('\n\n')}\n`).toMatchFileSnapshot(`frames/walk/${name}.txt`);
});
