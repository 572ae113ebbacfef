import type { Coach } from '../../lifter/coach.ts';
import { safeText } from '../../text/safe-text.ts';
import { footerHints, type HelpRow, helpRows } from '../footer.ts';
import { textOf } from '../line.ts';
import type { Model } from '../model.ts';
import type { Seen } from '../outcome.ts';
import { bannerLines, OPEN } from '../page.ts';
import { seenOf } from '../screen.ts';
import { moduleOf } from '../screens.ts';
import { spokenKeys, spokenWords } from './spoken-words.ts';

/** A screen as sentences, in the order in which they should be spoken. */
export function spokenLines(model: Model, coach: Coach): readonly string[] {
  const { ui, offer } = model;
  const now = seenOf(model, coach);
  // That a key does nothing for a second yet would be read out each time.
  const seen: Seen = { ...now, phase: now.phase && { ...now.phase, waitMs: 0 } };
  const body = ui.help ? helpTexts(seen) : moduleOf(ui.screen).spoken(seen);
  const said = ui.message ? [ui.message] : offer ? [`${offer.words} y takes it.`] : [];
  const banner = bannerLines(coach, moduleOf(ui.screen), OPEN).map(textOf);
  return [
    ...banner,
    ...[...body, ...said].map((text) => spokenWords(safeText(text))).filter(Boolean),
    ui.help ? 'Any key goes back.' : keysText(seen),
  ];
}

/** Keys that are said each time; the others are behind the question mark. */
const MOST_KEYS = 4;

function keysText(seen: Seen): string {
  const hints = footerHints(seen);
  const help = hints.filter(({ label }) => label === 'keys');
  const others = hints.filter((hint) => !help.includes(hint));
  const most = moduleOf(seen.screen).atTheBar ? MOST_KEYS : others.length;
  const said = [...others.slice(0, most), ...help];
  return `Keys. ${said.map(({ keys, label }) => `${spokenKeys(keys)}: ${label}`).join('. ')}.`;
}

/** Every key and what it does; those that wait say why. */
function helpTexts(seen: Seen): readonly string[] {
  const rows = helpRows(seen);
  const said = ({ keys, label, reason }: HelpRow) =>
    `${keys.map(spokenKeys).join(' or ')}: ${label}${reason === null ? '' : `: ${reason}`}`;
  const waits = rows.filter(({ reason }) => reason !== null);
  return [
    'The keys of here',
    ...rows.filter(({ reason }) => reason === null).map(said),
    ...(waits.length > 0 ? ['Not now', ...waits.map(said)] : []),
  ];
}
