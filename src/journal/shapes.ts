/** Tells whether a value has a shape. */
export type Shape = (value: unknown) => boolean;

export const text: Shape = (value) => typeof value === 'string';
export const whole: Shape = (value) => Number.isSafeInteger(value);
export const yesOrNo: Shape = (value) => typeof value === 'boolean';
export const finite: Shape = (value) => Number.isFinite(value);
export const anything: Shape = () => true;

export const oneOf =
  (...names: readonly string[]): Shape =>
  (value) =>
    names.includes(value as string);

export const orNull =
  (shape: Shape): Shape =>
  (value) =>
    value === null || shape(value);

/** The field may be missing. */
export const maybe =
  (shape: Shape): Shape =>
  (value) =>
    value === undefined || shape(value);

export const listOf =
  (shape: Shape): Shape =>
  (value) =>
    Array.isArray(value) && value.every(shape);

export const pairOf =
  (shape: Shape): Shape =>
  (value) =>
    Array.isArray(value) && value.length === 2 && value.every(shape);

/** An object with at least these fields. */
export function withFields(fields: Readonly<Record<string, Shape>>): Shape {
  const names = Object.keys(fields);
  const shapes = Object.values(fields);
  return (value) =>
    typeof value === 'object' &&
    value !== null &&
    shapes.every((shape, at) => shape((value as Record<string, unknown>)[names[at] as string]));
}
