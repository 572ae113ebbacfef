import type { SessionCommand } from '../session/command.ts';
import { nextSet, partnersOf, plannedSets } from '../session/next-set.ts';
import type { SessionState } from '../session/state.ts';
import { howMany } from '../text/words.ts';
import { loadText, shortText } from './words.ts';

/**
 * What an act did that leaves something out, changes or ends it, in one sentence for the lifter;
 * null for the acts that the screen shows by themselves. `before`: the session that it was done to.
 */
export function saidOf(
  commands: readonly SessionCommand[],
  before: SessionState | null,
): string | null {
  const words = before && commands.map((command) => wordsOf(command, before)).filter(Boolean);
  return words && words.length > 0 ? `${words.join(' ')} u takes it back.` : null;
}

function wordsOf(command: SessionCommand, session: SessionState): string | null {
  const named = (exercise: number) => session.exercises[exercise]?.prescribed.name ?? 'It';
  const { stage } = session;
  const place = stage.kind === 'lifting' ? stage.set : nextSet(session);
  const here = place && session.exercises[place.exercise];
  switch (command.do) {
    case 'skip-set':
      if (place?.role === 'warm-up') {
        const left = (here?.prescribed.warmUp.length ?? 0) - (here?.warmUpsDone ?? 0);
        return `${howMany(left, 'warm-up')} left out.`;
      }
      if (place?.role === 'mini') return 'Cluster ended.';
      if (place?.role === 'lead') return `${named(place.exercise)} left out.`;
      return place ? `Set ${place.index + 1} of ${named(place.exercise)} left out.` : null;
    case 'skip-exercise':
      return `${named(command.exercise)}: what was left is left out.`;
    case 'choose-exercise':
      return command.exercise === place?.exercise ? null : `On to ${named(command.exercise)}.`;
    case 'pair': {
      const others = place ? [place.exercise, ...partnersOf(session, place.exercise)] : [];
      return `${[...others, command.exercise].map(named).join(' and ')} alternate now.`;
    }
    case 'part-pair':
      return `${named(command.exercise)} alternates with no other any more.`;
    case 'add-set': {
      const exercise = session.exercises[session.current ?? place?.exercise ?? 0];
      return exercise ? `${plannedSets(exercise) + 1} sets now.` : null;
    }
    case 'shorten':
      return `${shortText(command)} w says why.`;
    case 'end-cluster':
      return 'Cluster ended.';
    case 'mark-pain':
      return `Pain is marked at ${named(command.exercise)}.`;
    case 'replace': {
      const { by, because, exercise } = command;
      const load = by.load === null ? '' : loadText(by.load, by, session.prescription.unit);
      if (because === 'other-lift') return `${by.name} in place of ${named(exercise)}.`;
      return `${load} from here on.`;
    }
    default:
      return null;
  }
}
