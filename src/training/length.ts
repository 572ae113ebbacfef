import type { Unit } from './mass.ts';

/**
 * Exact length: whole micrometres, as an inch is 25 400 of them exactly (NIST SP 811, App. B.8)
 * and a tape is read to the millimetre.
 */
declare const lengthBrand: unique symbol;
export type Length = number & { readonly [lengthBrand]: 'micrometres' };

export type LengthUnit = 'cm' | 'in';

const MICROMETRES: Readonly<Record<LengthUnit, number>> = { cm: 10_000, in: 25_400 };

/** The tape of who weighs in `unit`. */
export const tapeOf = (unit: Unit): LengthUnit => (unit === 'kg' ? 'cm' : 'in');

export const lengthOf = (amount: number, unit: LengthUnit): Length =>
  Math.round(amount * MICROMETRES[unit]) as Length;

/** The length as a float in `unit`, for JSON and plots; to the 4 digits that a micrometre can carry. */
export const lengthIn = (length: Length, unit: LengthUnit): number =>
  Math.round((length / MICROMETRES[unit]) * 1e4) / 1e4;

/** `86.5 cm`, `34 in`; at most one decimal. */
export const lengthText = (length: Length, unit: LengthUnit): string =>
  `${Number((length / MICROMETRES[unit]).toFixed(1))} ${unit}`;

const WRITTEN = /^(\d{1,4}(?:[.,]\d+)?)\s*(cm|in|"|inch|inches)?$/i;

/** Reads `86`, `86,5 cm` or `34in`; a bare number is in `unit`. Null when it is none of these. */
export function readLength(
  text: string,
  unit: LengthUnit,
): { readonly length: Length; readonly unit: LengthUnit } | null {
  const found = WRITTEN.exec(text.trim());
  if (!found) return null;
  const named = found[2]?.toLowerCase();
  const said = named === undefined ? unit : named === 'cm' ? 'cm' : 'in';
  return { length: lengthOf(Number(found[1]?.replace(',', '.')), said), unit: said };
}

/** An adult's waist lies between these. Ours, wide. */
export const WAIST_LIMITS: readonly [Length, Length] = [lengthOf(40, 'cm'), lengthOf(250, 'cm')];

/** Where the tape lies. Source: WHO 2008, Waist circumference and waist–hip ratio, STEPS protocol. */
export const WAIST_PLACE =
  'Midway between the lowest rib and the top of the hip bone, after breathing out, the tape level and not pulled tight.';
