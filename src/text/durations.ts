type Range = readonly [low: number, high: number];

/** `6`, or `6–8` for a range. */
export const rangeText = ([low, high]: Range): string =>
  low === high ? `${low}` : `${low}–${high}`;

/** Seconds as a clock shows them, rounded up: `3:05`, `1:02:03`. Never below `0:00`. */
export function clockText(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  const two = (part: number): string => String(part).padStart(2, '0');
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor(whole / 60) % 60;
  return hours > 0
    ? `${hours}:${two(minutes)}:${two(whole % 60)}`
    : `${minutes}:${two(whole % 60)}`;
}

/** Under so many seconds a duration is said in seconds, unless it is a whole minute. */
const IN_SECONDS = 120;

/** Seconds as said aloud: `90 s`, `3 min`, `2:30 min`, `1 h 5 min`. */
export function durationText(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  if (whole < IN_SECONDS && whole !== 60) return `${whole} s`;
  if (whole < 3600) return whole % 60 === 0 ? `${whole / 60} min` : `${clockText(whole)} min`;
  const minutes = Math.round(whole / 60);
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

/** A rest from its early to its late end: `10–15 s`, `60–90 s`, `3–5 min`, `90 s–3 min`. */
export function durationRangeText([from, to]: Range): string {
  if (from === to) return durationText(from);
  if (to < IN_SECONDS) return `${from}–${to} s`;
  if (from >= 60 && from % 60 === 0 && to % 60 === 0) return `${from / 60}–${to / 60} min`;
  return `${durationText(from)}–${durationText(to)}`;
}
