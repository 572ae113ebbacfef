import { WrongUse } from '../text/problem.ts';
import { type Quantity, readQuantity, type Unit } from '../training/mass.ts';

/**
 * A mass as it was typed: `82.5`, `82,5kg`, `185 lb`. A bare number is in `unit`.
 * @throws Refusal for anything else.
 */
export function massOperand(text: string, unit: Unit): Quantity {
  const quantity = readQuantity(text, unit);
  if (quantity) return quantity;
  throw new WrongUse({
    what: `"${text}" is not a mass.`,
    fix: `Write a number, with a unit if it is not ${unit}: 82.5, 82.5kg, 185lb.`,
  });
}
