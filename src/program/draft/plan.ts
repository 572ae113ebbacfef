import type { Option } from './draft-option.ts';

/** What is done on each day, in the order of the day: heavy lifts first. */
export type Plan = readonly (readonly Option[])[];

export const inOrder = (day: readonly Option[]): readonly Option[] =>
  day.toSorted((a, b) => a.order - b.order);

/** The day with one lift more, at its place in the order. */
export function withOption(day: readonly Option[], option: Option): readonly Option[] {
  const at = day.findIndex(({ order }) => order > option.order);
  if (at < 0) return [...day, option];
  return [...day.slice(0, at), option, ...day.slice(at)];
}

export const withoutLift = (day: readonly Option[], order: number): readonly Option[] =>
  day.filter((one) => one.order !== order);

export const hasLift = (day: readonly Option[] | undefined, order: number): boolean =>
  day?.some((one) => one.order === order) ?? false;
