import type { Quantity } from './mass.ts';

export type DiscColour = 'red' | 'blue' | 'yellow' | 'green' | 'white';

/** IWF Technical and Competition Rules: colours of the discs, by kg. */
const COLOURS: Readonly<Record<string, DiscColour>> = {
  '25': 'red',
  '20': 'blue',
  '15': 'yellow',
  '10': 'green',
  '5': 'white',
  '2.5': 'red',
  '2': 'blue',
  '1.5': 'yellow',
  '1': 'green',
  '0.5': 'white',
};

/** Colour of a disc in competition, by its stamp in kg; null where the rules have no such disc. */
export const discColour = ({ amount, unit }: Quantity): DiscColour | null =>
  unit === 'kg' ? (COLOURS[amount] ?? null) : null;
