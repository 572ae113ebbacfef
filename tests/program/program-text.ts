/** A small program that reads without a problem; tests change one thing in it. */
export const PLAIN = `name: Lean spring
unit: kg
aim: cut
days_per_week: 3
days:
  - name: A
    exercises:
      - lift: back-squat
        sets: 3
        reps: 5-8
        rest: 3-5 min
        reserve: 1-2
        start: 80
      - lift: dumbbell-side-raise
        cluster: { lead: 12-15, rest: 10-15 s, most_sets: 5 }
        start: 8
  - name: B
    exercises:
      - lift: landmine-press
        sets: 3
        reps: 6-10
      - lift: plank
        sets: 2
        seconds: 30-60
lifts:
  landmine-press:
    name: Landmine press
    loading: barbell
    kind: compound
    trains: { front-delts: 1, chest: 0.5, triceps: 0.5 }
`;

/** {@link PLAIN} with the first `old` replaced; fails when it is not there. */
export function withChange(old: string, by: string, text = PLAIN): string {
  if (!text.includes(old)) throw new Error(`There is no ${JSON.stringify(old)} in the text.`);
  return text.replace(old, by);
}
