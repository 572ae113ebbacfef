import type { Bench } from '../../workbench/bench.ts';
import { asPlannedTexts } from '../as-planned.ts';
import { bannerLines } from '../banner.ts';
import { choicesOf } from '../choices-of.ts';
import { entryTarget, fieldText } from '../entry.ts';
import { footerHints } from '../footer.ts';
import { textOf } from '../line.ts';
import { longPage } from '../long-page.ts';
import { draftOf } from '../outcome.ts';
import { type Phase, phaseOf } from '../phase.ts';
import { clusterEnd } from '../runner/cluster-end.ts';
import { headline } from '../runner/headline.ts';
import { implementLines } from '../runner/implement.ts';
import { nextLines } from '../runner/next-lines.ts';
import { helpLines } from '../screens/lists.ts';
import { loadLines } from '../screens/load.ts';
import { correctLines, searchLines } from '../screens/past.ts';
import { previewLines } from '../screens/preview.ts';
import { addLiftLines, sheetLines } from '../screens/program.ts';
import { weighLines } from '../screens/weigh.ts';
import type { Model } from '../ui-state.ts';
import { savedText, secondsText } from '../words.ts';
import { spokenKeys, spokenWords } from './spoken-words.ts';

/** Wide enough that nothing is broken into lines: a screen reader wants whole sentences. */
const WIDE = 10_000;
/** Figures beside the days would be read between them. */
const NARROW = 75;

/**
 * A screen as sentences, in the order in which they should be spoken. They change when something
 * happens, never because a second went by: a screen reader would read out every one.
 */
export function spokenLines(model: Model, bench: Bench): readonly string[] {
  const { ui, session, now } = model;
  // That a key does nothing for a second yet would be read out each time.
  const phase = session ? { ...phaseOf(session, now), waitMs: 0 } : null;
  const body = ui.help ? helpTexts(model, phase) : bodyTexts(model, phase, bench);
  const said = ui.message ? [ui.message] : model.offer ? [`${model.offer.words} o takes it.`] : [];
  const banner = bannerLines(bench, ui.screen.kind, WIDE).map(textOf);
  return [
    ...banner,
    ...[...body, ...said].map(spokenWords).filter(Boolean),
    ui.help ? 'Any key goes back.' : keysText(model, phase),
  ];
}

/** Keys that are said each time; the others are behind the question mark. */
const MOST_KEYS = 4;

function keysText(model: Model, phase: Phase | null): string {
  const hints = footerHints(model, phase);
  const help = hints.filter(({ label }) => label === 'keys');
  const others = hints.filter((hint) => !help.includes(hint));
  const most = model.ui.screen.kind === 'runner' ? MOST_KEYS : others.length;
  const said = [...others.slice(0, most), ...help];
  return `Keys. ${said.map(({ keys, label }) => `${spokenKeys(keys)}: ${label}`).join('. ')}.`;
}

/** Keys and what they do, set apart by blanks on the screen. */
const helpTexts = (model: Model, phase: Phase | null): readonly string[] =>
  helpLines(model, phase, WIDE).map((one) => {
    const [keys = '', ...does] = textOf(one).split(/ {2,}/);
    const names = keys.split(' ').map(spokenKeys);
    return does.length === 0 ? keys : `${names.join(' or ')}: ${does.join(' ')}`;
  });

function bodyTexts(model: Model, phase: Phase | null, bench: Bench): readonly string[] {
  const { screen } = model.ui;
  const long = longPage(model, bench, WIDE);
  if (long) return long.map(textOf).map(withoutBars);
  switch (screen.kind) {
    case 'runner':
      return phase ? runnerTexts(model, phase, bench) : [];
    case 'preview':
      return previewLines(model, screen, bench, WIDE, WIDE).map(spokenText);
    case 'load':
      return [
        ...loadLines(model, screen, bench, WIDE).map(textOf).filter(isSaid),
        screen.typed === '' ? '' : `Typed: ${screen.typed}.`,
      ];
    case 'weigh':
      return [
        ...weighLines(model, screen, WIDE).map(textOf).filter(isSaid),
        screen.typed === '' ? '' : `Typed: ${screen.typed}.`,
      ];
    case 'correct':
      return correctLines(screen, WIDE).map(textOf);
    case 'search':
      return searchLines(screen.typed, WIDE).map(textOf);
    case 'program':
      return sheetLines(screen, NARROW, WIDE).map(spokenText);
    case 'add-lift':
      return addLiftLines(screen, WIDE, WIDE).map(spokenText);
    case 'note':
      return ['Note. Type it, then enter.'];
    default:
      return listTexts(model, bench);
  }
}

/** Block digits are drawn, not said. */
const isSaid = (text: string): boolean => !/[█▀▄]/.test(text);

/** The number behind a bar says all of it. */
const withoutBars = (text: string): string => text.replace(/[█▌░│]+ */g, ' ');

/** Columns that were set apart by blanks are set apart by a full stop. */
const spokenText = (line: Parameters<typeof textOf>[0]): string =>
  textOf(line).replace('▸ ', 'Chosen: ').trim().replace(/ {2,}/g, '. ');

function listTexts(model: Model, bench: Bench): readonly string[] {
  const list = choicesOf(model, bench);
  const { screen } = model.ui;
  if (!list || !('chosen' in screen)) return [];
  const rows = list.choices.map(({ label, detail }, index) => {
    const words = detail ? `${label}, ${detail}` : label;
    return index === screen.chosen ? `Chosen: ${words}` : words;
  });
  return [list.title, ...(list.words ? [list.words] : []), ...rows];
}

function runnerTexts(model: Model, phase: Phase, bench: Bench): readonly string[] {
  const { session } = model;
  if (!session) return [];
  const { word, title, place, caption } = headline(model, phase);
  const name = [title, place].filter(Boolean).join(', ');
  const change = implementLines(session, phase, bench, WIDE).map(textOf);
  if (session.pausedSince) return [`Paused. ${name}.`, 'Space goes on.'];
  if (phase.kind === 'all-done') {
    const planned = asPlannedTexts(session);
    const target = entryTarget(session, phase, null);
    const ended = target ? clusterEnd(session, target) : [];
    return [
      ...ended,
      'Every set is done.',
      ...(planned.length > 0 ? ['Saved as planned:'] : []),
      ...planned,
    ];
  }
  if (phase.kind === 'resting') {
    const next = nextLines(session, phase, WIDE).map(textOf);
    const last = phase.lastOne ? ['Last one.'] : [];
    return [
      ...savedTexts(model, phase),
      restMoment(phase),
      ...last,
      `Next: ${name}.`,
      ...next,
      ...change,
    ];
  }
  const [first] = caption;
  return [...savedTexts(model, phase), `${word}. ${name}.`, first ?? '', ...change];
}

/** The start, the half, ten seconds and the ends of a rest, each once. */
function restMoment({
  running,
  elapsedMs,
  end,
  leftMs,
}: Extract<Phase, { kind: 'resting' }>): string {
  const { from, to } = running.rest;
  if (end === 'late') return 'Ready: lift when you are.';
  if (leftMs <= 10_000 && from > 20) return 'Ten seconds.';
  if (elapsedMs >= from * 500 && from > 40) return 'Half of the rest is over.';
  const latest = to > from ? `, at most ${secondsText(to)}` : '';
  return `Rest for ${secondsText(from)}${latest}.`;
}

function savedTexts(model: Model, phase: Phase): readonly string[] {
  const { session } = model;
  const draft = draftOf(model);
  const target = session && entryTarget(session, phase, draft);
  if (!session || !target) return [];
  if (draft) {
    const text = fieldText(target, draft, draft.field, session.prescription.unit);
    const field = {
      count: target.exercise.counts,
      reserve: 'in reserve',
      load: session.prescription.unit,
    };
    return [`${text} ${field[draft.field]}`];
  }
  if (!target.of) return [];
  const saved = `${target.exercise.name} ${savedText(target.of, target.exercise)}.`;
  return [saved, ...clusterEnd(session, target)];
}
