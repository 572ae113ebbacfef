/** How a lift comes back after a time away from it. Common practice, but for the way back of the longest: ours. */
export interface Layoff {
  readonly rule: 'return-short' | 'return-medium' | 'return-long' | 'start-again';
  /** The load is at or below this share of the last one. */
  readonly share: number;
  /** Half the sets, and one more in reserve, in the first session. */
  readonly gentle: boolean;
}

const LAYOFFS: readonly (Layoff & { readonly fromDay: number })[] = [
  { fromDay: 181, rule: 'start-again', share: 0.6, gentle: true },
  { fromDay: 85, rule: 'return-long', share: 0.8, gentle: true },
  { fromDay: 29, rule: 'return-medium', share: 0.9, gentle: true },
  { fromDay: 15, rule: 'return-short', share: 0.95, gentle: false },
];

/** The rule for so many days since the lift's last set in any track; null for under 15. */
export function layoffAfter(days: number): Layoff | null {
  return LAYOFFS.find(({ fromDay }) => days >= fromDay) ?? null;
}
