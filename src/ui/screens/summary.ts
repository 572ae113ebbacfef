import type { PrescribedExercise } from '../../progression/prescription.ts';
import { worksOf } from '../../session/next-set.ts';
import type { LiftWork, SessionState } from '../../session/state.ts';
import { summaryOf } from '../../session/summary.ts';
import { BLANK, indented, type Line, line, paragraph, span, spread } from '../line.ts';
import { ask, type Seen } from '../outcome.ts';
import { pageScreen, readOn } from '../page.ts';
import { lightSets } from '../runner/exercise-end.ts';
import { UNDO } from '../runner/undo-keys.ts';
import { LEAVE } from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { loadText, minutesText, repsText, secondsText } from '../words.ts';

type Summary = Extract<Screen, { kind: 'summary' }>;

/** After the session: done against the plan, bests, time, and what comes next time. */
function all({ model, coach }: Seen<Summary>, columns: number): Line[] {
  const { session, now } = model;
  if (!session) return [];
  const { minutes, setsDone, setsAsked } = summaryOf(session, now);
  const { hardReps, clusters, bests, next } = coach.review();
  const facts = [`${setsDone} of ${setsAsked} sets`, minutesText(minutes)];
  if (hardReps !== null) facts.push(`${hardReps} hard reps in clusters`);
  const inset = (text: string, role: 'plain' | 'strong' = 'plain') =>
    paragraph(text, columns - 2, role, 2).map((one) => indented(one, 2));
  return [
    spread([span('Done', 'strong'), span(` · ${session.prescription.day}`)], [], columns),
    ...paragraph(facts.join(' · '), columns),
    ...(clusters
      ? paragraph(
          `Clusters took ${secondsText(clusters.spent)}; as straight sets the same work takes ${secondsText(clusters.asStraight)}.`,
          columns,
        )
      : []),
    ...session.exercises
      .flatMap(worksOf)
      .flatMap((work) => [
        BLANK,
        line(work.prescribed.name, 'strong'),
        ...workTexts(work, session).flatMap((text) => inset(text)),
      ]),
    ...(bests.length > 0
      ? [BLANK, line('Bests', 'strong'), ...bests.flatMap((text) => inset(text))]
      : []),
    ...(next.length > 0 ? [BLANK, line('Next time', 'strong')] : []),
    ...next.flatMap(({ name, plan, why }) => [
      ...inset(`${name} · ${plan}`, 'strong'),
      ...inset(why),
    ]),
  ];
}

function workTexts(work: LiftWork, session: SessionState): string[] {
  const { prescribed, judgedBy, done, pain } = work;
  const { unit } = session.prescription;
  if (done.length === 0) return [pain ? 'left out, pain marked' : 'left out'];
  const asked = judgedBy ?? prescribed;
  const [first] = done;
  const sameLoad = done.every(({ load }) => load === first?.load);
  const counts =
    sameLoad && first
      ? `${loadText(first.load, asked, unit)} · ${repsText(done, asked)}`
      : done
          .map((set) => `${loadText(set.load, asked, unit)} × ${repsText([set], asked)}`)
          .join(', ');
  const light = lightSets(work);
  return [
    `did  ${counts}`,
    `plan ${aimsText(asked)}`,
    ...(light ? [light] : []),
    ...(pain ? ['pain marked'] : []),
  ];
}

const aimsText = ({ sets, minis, counts }: PrescribedExercise): string =>
  minis
    ? `${sets[0]?.aim} ${counts} and mini-sets of ${minis.aim}`
    : `${sets.map(({ aim }) => aim).join(', ')} ${counts}`;

export const SUMMARY_SCREEN = pageScreen<Summary>({
  all,
  first: [UNDO],
  last: [
    {
      keys: ['space', 'enter'],
      label: 'read on, done',
      footer: 0,
      press: readOn(all, (acting) => ask(acting, { do: 'leave', status: 0 })),
    },
    { ...LEAVE, tap: { at: 0, says: 'LEAVE' } },
  ],
});
