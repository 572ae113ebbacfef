import { plateWords } from '../lifter/gear.ts';
import { openLifter } from '../lifter/open-lifter.ts';
import { jsonText } from '../text/json-text.ts';
import { nearestKey } from '../text/nearest.ts';
import { Refusal } from '../text/problem.ts';
import { type Bar, barOf, type Gear } from '../training/gear.ts';
import { inUnit, massOf, massText, quantityText, readsAs, type Unit } from '../training/mass.ts';
import { platePicture } from '../training/plate-picture.ts';
import { type LoadedBar, loadBar, nearestBelowAndAbove } from '../training/plates.ts';
import type { Call, Run } from './call.ts';
import type { LoadJson } from './load-schema.ts';
import { massOperand } from './operands.ts';

/** Says what to put on the bar. Exit 1 when the load cannot be made exactly. */
export const run: Run = (call) => {
  const lifter = openLifter(call.ports, call.global);
  const gear = lifter.gear();
  const bar = barAsked(call, gear);
  const { amount, unit } = massOperand(call.args[0] ?? '', lifter.unit());
  const wish = massOf({ amount, unit });
  const around = nearestBelowAndAbove(gear, bar.name, wish);
  // A bar in kg with plates in lb makes loads of many decimals: the one that is shown so is meant.
  const exact =
    loadBar(gear, bar.name, wish) ??
    [around.below, around.above].find((made) => made && readsAs(made.total, wish, unit)) ??
    null;
  const near = exact ? { below: null, above: null } : around;
  if (call.global.json) {
    const made = (loaded: LoadedBar | null) => loaded && loadedJson(loaded, unit);
    const json: LoadJson = {
      schema: 1,
      unit,
      wish: amount,
      bar: { name: bar.name, mass: bar.mass.amount, unit: bar.mass.unit },
      exact: made(exact),
      below: made(near.below),
      above: made(near.above),
    };
    call.print(jsonText(json));
  } else if (exact) {
    const width = Math.min(call.ports.stdout.columns || 80, 100);
    call.print([loadedWords(exact, unit, gear), ...platePicture(exact, width)].join('\n'));
  } else {
    call.print(nearWords(massText(wish, unit), near, unit, gear));
  }
  return exact ? 0 : 1;
};

function barAsked({ options }: Call, gear: Gear): Bar {
  const asked = typeof options.bar === 'string' ? options.bar : null;
  const bar = barOf(gear, asked);
  if (bar) return bar;
  const names = gear.bars.map(({ name }) => name);
  const near = asked === null ? null : nearestKey(asked, names);
  throw new Refusal({
    what: asked === null ? 'Your gear has no bar.' : `Your gear has no bar "${asked}".`,
    fix: near
      ? `Did you mean "${near}"?`
      : names.length > 0
        ? `Bars: ${names.join(', ')}.`
        : 'Add one with "holdfast gear".',
  });
}

const loadedJson = ({ total, side }: LoadedBar, unit: Unit) => ({
  total: inUnit(total, unit),
  plates: side.map(({ stamped }) => stamped.amount),
  plate_units: side.map(({ stamped }) => stamped.unit),
});

function loadedWords({ bar, side, total }: LoadedBar, unit: Unit, gear: Gear): string {
  const plates = side.length === 0 ? 'the empty bar' : `${plateWords(side, gear, unit)} a side`;
  // Plates are stamped in the unit of the gear; beside another one both help.
  const other = gear.unit === unit ? '' : ` (${massText(total, gear.unit, 1)})`;
  const collars = bar.collars.amount > 0 ? `, collars ${quantityText(bar.collars)}` : '';
  return `${massText(total, unit)}${other} on the ${bar.name} (${quantityText(bar.mass)}${collars}): ${plates}`;
}

function nearWords(
  wish: string,
  { below, above }: { below: LoadedBar | null; above: LoadedBar | null },
  unit: Unit,
  gear: Gear,
): string {
  const ways = [
    ...(below ? [`${loadedWords(below, unit, gear)}, is the nearest below`] : []),
    ...(above ? [`${loadedWords(above, unit, gear)}, is the nearest above`] : []),
  ];
  return `${wish} cannot be made with your plates: ${ways.join('; ')}.`;
}
