import type { Result } from '../progression/past.ts';

/**
 * The results that every word of `query` fits: lift, program, day, date (`2026-11` for a month) or a
 * note of the session, upper and lower case alike. All of them for an empty query.
 */
export function searchHistory(
  results: readonly Result[],
  query: string,
  notesOf: (session: string) => readonly string[],
): Result[] {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [...results];
  return results.filter(({ exercise, program, day, date, session }) => {
    const texts = [exercise.lift, exercise.name, program, `day ${day}`, ...notesOf(session)];
    const found = texts.join('\n').toLowerCase();
    return words.every((word) => date.toString().startsWith(word) || found.includes(word));
  });
}
