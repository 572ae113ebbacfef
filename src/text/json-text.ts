/**
 * One JSON document for other programs: C1 controls and bidirectional marks are escaped, which
 * `JSON.stringify` leaves as they are and a terminal would act on.
 */
export function jsonText(value: unknown): string {
  return JSON.stringify(value, null, 2).replace(
    /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g,
    (found) => `\\u${found.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
