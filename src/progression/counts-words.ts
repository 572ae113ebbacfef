/**
 * Reps of the sets of an exercise in a row: `8, 7, 6`, and of a cluster its lead set before its
 * mini-sets: `14, then 5 4`.
 */
export function countsWords(
  counts: readonly (string | number)[],
  style: 'straight' | 'cluster',
  between = ', ',
): string {
  const [lead, ...minis] = counts;
  return style === 'cluster' && minis.length > 0
    ? `${lead}, then ${minis.join(' ')}`
    : counts.join(between);
}
