import type { Gear } from '../training/gear.ts';
import type { Lift } from '../training/lift.ts';

/** Lifts whose key, name, movement or muscles every word of `query` is part of; loadable ones first. */
export function liftsLike(
  lifts: ReadonlyMap<string, Lift>,
  query: string,
  gear: Gear,
): readonly Lift[] {
  const words = query
    .toLowerCase()
    .split(/[\s-]+/)
    .filter(Boolean);
  const found = [...lifts.values()].filter((lift) => {
    const text = [lift.key, lift.name, lift.pattern, lift.loading, ...Object.keys(lift.trains)]
      .join(' ')
      .toLowerCase();
    return words.every((word) => text.includes(word));
  });
  const rank = (lift: Lift) => (canLoad(lift, gear) ? 0 : 1);
  return found.toSorted((a, b) => rank(a) - rank(b));
}

function canLoad({ loading, hands }: Lift, gear: Gear): boolean {
  switch (loading) {
    case 'barbell':
      return gear.bars.length > 0;
    case 'dumbbell':
      return [...gear.dumbbells, ...gear.handles].some(({ count }) => count >= hands);
    case 'stack':
      return gear.stacks.length > 0;
    case 'bodyweight':
    case 'free':
      return true;
  }
}
