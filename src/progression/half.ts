/** Half the sets of a lighter week or of a first session after a layoff, rounded up. */
export const half = (sets: number): number => Math.ceil(sets / 2);
