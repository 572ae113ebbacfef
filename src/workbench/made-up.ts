import type { PrescribedExercise } from '../progression/prescription.ts';
import { bodyGearFor } from '../training/body-gear.ts';
import { fixedDumbbell, loadHandle } from '../training/dumbbells.ts';
import type { Gear, PlateKind } from '../training/gear.ts';
import type { Mass } from '../training/mass.ts';
import { platePicture } from '../training/plate-picture.ts';
import { loadBar, type PlateChange, plateChange } from '../training/plates.ts';
import type { MadeUp } from './bench.ts';

type Loaded = Pick<PrescribedExercise, 'loading' | 'bar' | 'step' | 'hands'>;

const NO_PICTURE = () => [];

/** How the lifter's own gear makes a load; null where it does not matter or cannot be told. */
export function madeUp(
  { loading, bar, step, hands }: Loaded,
  load: Mass,
  gear: Gear,
): MadeUp | null {
  // Loads by a step of the program's own say nothing about plates.
  if (step !== null) return null;
  switch (loading) {
    case 'barbell': {
      const loaded = loadBar(gear, bar, load);
      return (
        loaded && {
          words: sideWords(loaded.side, 'empty bar'),
          picture: (width) => platePicture(loaded, width),
        }
      );
    }
    case 'dumbbell': {
      if (fixedDumbbell(gear, hands, load)) return null;
      const loaded = loadHandle(gear, hands, load);
      return loaded && { words: sideWords(loaded.side, 'empty handle'), picture: NO_PICTURE };
    }
    case 'bodyweight': {
      const worn = bodyGearFor(gear, load);
      if (!worn || (worn.plates.length === 0 && worn.bands.length === 0)) return null;
      const words =
        worn.bands.length > 0
          ? worn.bands.map(({ name }) => name).join(' and ')
          : `${plateWords(worn.plates)} on the belt`;
      return { words, picture: NO_PICTURE };
    }
    default:
      return null;
  }
}

/** What to take off and put on at each end of the bar, from one load to the next; null where nothing changes. */
export function plateChangeWords(
  { loading, bar, step }: Loaded,
  from: Mass | null,
  to: Mass,
  gear: Gear,
): string | null {
  if (loading !== 'barbell' || step !== null) return null;
  const before = from === null ? null : loadBar(gear, bar, from);
  const after = loadBar(gear, bar, to, before);
  return after && changeWords(plateChange(before, after));
}

/** `take off 5, put on 10 + 2.5`, a side; null where nothing changes. */
export function changeWords({ off, on }: PlateChange): string | null {
  const parts = [
    ...(off.length > 0 ? [`take off ${plateWords(off)}`] : []),
    ...(on.length > 0 ? [`put on ${plateWords(on)}`] : []),
  ];
  return parts.length === 0 ? null : `${parts.join(', ')} a side`;
}

const sideWords = (side: readonly PlateKind[], empty: string): string =>
  side.length === 0 ? empty : `${plateWords(side)} a side`;

/** `20 + 10`, with the unit named only where both units are on it. */
export function plateWords(plates: readonly PlateKind[]): string {
  const mixed = new Set(plates.map(({ stamped }) => stamped.unit)).size > 1;
  return plates
    .map(({ stamped }) => (mixed ? `${stamped.amount} ${stamped.unit}` : `${stamped.amount}`))
    .join(' + ');
}
