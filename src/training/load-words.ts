import type { Basis } from './lift.ts';
import { type Mass, massText, type Unit } from './mass.ts';

/** A load as the lifter thinks of it: `80 kg`, `12 kg a hand`, `body weight + 10 kg`, `body weight − 20 kg`. */
export function loadWords(load: Mass, basis: Basis, unit: Unit): string {
  if (basis === 'hand') return `${massText(load, unit)} a hand`;
  if (basis === 'stack') return `${massText(load, unit)} on the stack`;
  if (basis !== 'added') return massText(load, unit);
  if (load === 0) return 'body weight';
  return load > 0
    ? `body weight + ${massText(load, unit)}`
    : `body weight − ${massText(-load as Mass, unit)}`;
}
