/**
 * Exact mass. Plates in kilograms and pounds mix in home gyms, so a mass is a whole number of
 * micrograms: 1 kg = 1 000 000 000 µg, and 1 lb = 453 592 370 µg exactly (NIST SP 811, App. B.8).
 * A number holds whole micrograms exactly up to 9 000 tonnes.
 */
declare const massBrand: unique symbol;
export type Mass = number & { readonly [massBrand]: 'micrograms' };

export type Unit = 'kg' | 'lb';

/** A mass as it is stamped on a plate or typed by the lifter: `{amount: 45, unit: 'lb'}`. */
export interface Quantity {
  readonly amount: number;
  readonly unit: Unit;
}

export const MICROGRAMS: Readonly<Record<Unit, number>> = {
  kg: 1_000_000_000,
  lb: 453_592_370,
};

export const NO_MASS = 0 as Mass;

/** Mass of whole micrograms; refuses fractions and numbers too large to be exact. */
export function micrograms(count: number): Mass {
  if (!Number.isSafeInteger(count)) {
    throw new RangeError(`A mass is a whole number of micrograms, not ${count}.`);
  }
  return count as Mass;
}

/** The mass of `amount` in `unit`, to the nearest microgram. */
export function mass(amount: number, unit: Unit): Mass {
  return micrograms(Math.round(amount * MICROGRAMS[unit]));
}

export const kilograms = (amount: number): Mass => mass(amount, 'kg');
export const pounds = (amount: number): Mass => mass(amount, 'lb');
export const massOf = (quantity: Quantity): Mass => mass(quantity.amount, quantity.unit);

export const plus = (a: Mass, b: Mass): Mass => micrograms(a + b);
export const minus = (a: Mass, b: Mass): Mass => micrograms(a - b);
/** `m` taken a whole number of times. */
export const times = (m: Mass, count: number): Mass => micrograms(m * count);

/** More than what a product of a mass below 9 t and a share loses in binary, in micrograms. */
const LOST_IN_BINARY = 0.001;

/**
 * `m` × a share such as 0.95, rounded down to a whole microgram; 41 % of 80 kg is 32.8 kg, not a
 * microgram less. For limits, never for plates.
 */
export const share = (m: Mass, factor: number): Mass =>
  micrograms(Math.floor(m * factor + LOST_IN_BINARY));

/** The mass as a float in `unit`, for estimates, screens and JSON; rounded to the 9 digits that a microgram can carry. */
export function inUnit(m: Mass, unit: Unit): number {
  return Math.round((m / MICROGRAMS[unit]) * 1e9) / 1e9;
}

/** Mass as the lifter reads it, at most `digits` decimals and no trailing zeros: `82.5 kg`, `45 lb`. */
export function massText(m: Mass, unit: Unit, digits = 2): string {
  return `${massNumber(m, unit, digits)} ${unit}`;
}

/** The number alone of {@link massText}: `82.5`. */
export function massNumber(m: Mass, unit: Unit, digits = 2): string {
  const rounded = Number((m / MICROGRAMS[unit]).toFixed(digits));
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

/** Do two masses read the same in a unit? What is shown can then be typed back. */
export const readsAs = (m: Mass, other: Mass, unit: Unit): boolean =>
  massText(m, unit) === massText(other, unit);

/** Quantity as stamped: `45 lb`. */
export const quantityText = (quantity: Quantity): string => `${quantity.amount} ${quantity.unit}`;

const WRITTEN = /^([+-]?\d+(?:[.,]\d+)?)\s*(kgs?|kilos?|lbs?|pounds?)?$/i;

/** Nobody lifts, owns or weighs more, in either unit; larger ones are a key that was held. Ours. */
export const MOST_AMOUNT = 10_000;

/** Reads `82.5`, `82,5 kg` or `181.9lb`; a bare number is in `unit`. Null when it is none of these. */
export function readQuantity(text: string, unit: Unit): Quantity | null {
  const found = WRITTEN.exec(text.trim());
  if (!found) return null;
  const named = found[2]?.toLowerCase() ?? unit;
  const amount = Number(found[1]?.replace(',', '.'));
  if (Math.abs(amount) > MOST_AMOUNT) return null;
  return {
    amount,
    unit: named.startsWith('k') ? 'kg' : 'lb',
  };
}
