import { openLifter } from '../lifter/open-lifter.ts';
import { CATALOGUE } from '../program/catalogue.ts';
import { missingFor } from '../program/check/rules/gear.ts';
import { findLifts, nearestLift, respelled } from '../program/find-lifts.ts';
import { textTable } from '../report/table.ts';
import { wrapped } from '../text/columns.ts';
import { jsonText } from '../text/json-text.ts';
import { Refusal } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import { keyWords } from '../text/words.ts';
import type { Gear } from '../training/gear.ts';
import { directMuscles, type Lift } from '../training/lift.ts';
import type { Run } from './call.ts';
import type { LiftsJson } from './lifts-schema.ts';
import { textSize } from './text-size.ts';

/** Lists the lifts that fit some words: what programs call them, what they train and need. */
export const run: Run = ({ args, global, ports, print, tell }) => {
  const lifter = openLifter(ports, global);
  const lifts = global.program ? lifter.program().lifts : CATALOGUE;
  const gear = lifter.gear();
  const query = args.join(' ');
  const found = findLifts(lifts, query, gear);
  const near = found.length === 0 ? nearTo(lifts, query, gear) : null;
  if (found.length === 0 && !near) {
    throw new Refusal({
      what: `There is no lift like "${safeText(query)}".`,
      fix: 'Try one word of its name or a muscle, such as "holdfast lifts row".',
    });
  }
  if (near) tell(`There is no lift like "${safeText(query)}"; ${near.words}`);
  const listed = near?.lifts ?? found;
  if (global.json) {
    print(
      jsonText({ schema: 1, lifts: listed.map((lift) => jsonOf(lift, gear)) } satisfies LiftsJson),
    );
    return 0;
  }
  const columns = [
    { heading: 'lift', align: 'left' },
    { heading: 'trains', align: 'left', dropFirst: 1 },
    { heading: 'needs', align: 'left', dropFirst: 2 },
  ] as const;
  const rows = listed.map((lift) => [
    lift.key,
    directMuscles(lift.trains).map(keyWords).join(', '),
    needsText(lift, gear),
  ]);
  const { width } = textSize(ports);
  print(textTable(columns, rows, width).join('\n'));
  const [only] = listed;
  if (only && listed.length === 1) {
    const said = [only.form, only.caution].filter((text) => text !== null);
    print(['', ...said.flatMap((text) => wrapped(text, width, '  '))].join('\n'));
  }
  return 0;
};

const jsonOf = (lift: Lift, gear: Gear): LiftsJson['lifts'][number] => ({
  key: lift.key,
  name: lift.name,
  pattern: lift.pattern,
  loading: lift.loading,
  kind: lift.kind,
  direct: directMuscles(lift.trains),
  joints: [...lift.joints],
  needs: [...lift.needs],
  missing: missingFor({ lift, step: null }, gear),
});

/** What was most likely meant by words that fit nothing. */
function nearTo(lifts: ReadonlyMap<string, Lift>, query: string, gear: Gear) {
  const near = nearestLift(lifts, query);
  if (near) return { lifts: [near], words: 'the nearest is this one.' };
  const meant = respelled(lifts, query);
  const found = meant === null ? [] : findLifts(lifts, meant, gear);
  return found.length > 0 ? { lifts: found, words: `these fit "${meant}".` } : null;
}

const LOADED_BY: Readonly<Record<Lift['loading'], string>> = {
  barbell: 'bar',
  dumbbell: 'dumbbells',
  stack: 'machine',
  bodyweight: '',
  band: 'band',
  free: 'other load',
};

function needsText(lift: Lift, gear: Gear): string {
  const needs = [LOADED_BY[lift.loading], ...lift.needs].filter(Boolean).join(', ') || 'nothing';
  const missing = missingFor({ lift, step: null }, gear);
  return missing === null ? needs : `${needs} (you lack ${missing})`;
}
