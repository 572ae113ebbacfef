import { setsOf } from '../program/program.ts';
import { boutsOf } from '../progression/bout.ts';
import { lighterWeekProposal } from '../progression/lighter-week.ts';
import { dropRefused, hasDrop } from '../progression/set-drop.ts';
import { maySpareSet, tracksWithDrop } from '../progression/weekly-sets.ts';
import { CUT_LIMITS } from './cut-limits.ts';
import { reviewReason } from './cut-rules.ts';
import { daysBetween } from './cut-start.ts';
import type { Evidence, Watched } from './evidence.ts';
import { changeBy, finding, type ReviewFinding } from './finding.ts';

export function judgeLighterWeek({ program, past, today }: Evidence): ReviewFinding[] {
  const proposal = lighterWeekProposal(program, past, today);
  return proposal ? [finding(proposal)] : [];
}

/**
 * Slipping tracks that do one set fewer, or will from their next session on. The change of the
 * program file is only offered when the drop has been in force for three weeks.
 */
export function judgeLess(evidence: Evidence): ReviewFinding[] {
  const { exercises, program, past, today, lighterWeek } = evidence;
  // A lighter week and dropped sets exclude each other: one or the other is tried.
  if (program.aim !== 'cut' || lighterWeek || lighterWeekProposal(program, past, today)) return [];
  const dropped = tracksWithDrop(program, past);
  const byTrack = new Map<string, Watched[]>();
  for (const each of exercises) byTrack.set(each.track, [...(byTrack.get(each.track) ?? []), each]);
  return [...byTrack].flatMap(([track, places]) => {
    const [first] = places;
    if (!first) return [];
    const { exercise, slip } = first;
    const { name, key: lift } = exercise.lift;
    if (dropRefused(past, track, today)) return [];
    const since = dropSince(evidence, first);
    if (since && daysBetween(since, today) >= CUT_LIMITS.dropInForceDays) {
      const changes = places.map((place) => changeBy(place, -1));
      const facts = {
        lift,
        name,
        since: since.toString(),
        from: setsOf(exercise),
        to: setsOf(exercise) - 1,
      };
      return [finding(reviewReason('do-less-in-file', facts), track, changes)];
    }
    if (since)
      return [finding(reviewReason('do-less', { lift, name, since: since.toString() }), track)];
    if (!slip || !maySpareSet(program, exercise, dropped)) return [];
    return [finding(reviewReason('do-less', { lift, name, by: slip.by, odds: slip.odds }), track)];
  });
}

/** First day of the sessions running in which the track's dropped set was left out; null without a drop. */
function dropSince({ past }: Evidence, { track, exercise }: Watched) {
  const bouts = boutsOf(past, track);
  const kept = bouts.findLastIndex((bout) => !hasDrop(bout, setsOf(exercise)));
  return bouts[kept + 1]?.result.date ?? null;
}
