/** A program of one short day with rests of seconds: two straight sets, then a cluster of up to five. */
export const TINY_PROGRAM = `name: Tiny
unit: kg
aim: cut
days_per_week: 3
rest: 2-4 s
days:
  - name: A
    exercises:
      - lift: back-squat
        sets: 2
        reps: 5-8
        rest: 4-8 s
        reserve: 1-2
        start: 40
        warm_up: false
      - lift: dumbbell-side-raise
        cluster: { lead: 12-15, rest: 3-5 s, most_sets: 5 }
        start: 6
        warm_up: false
`;
