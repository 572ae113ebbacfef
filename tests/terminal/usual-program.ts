/** Two days with rests as they are in training; a cluster stands between straight sets. */
export const USUAL_PROGRAM = `name: Usual
unit: kg
aim: cut
days_per_week: 3
rest: 2-3 min
accept:
  few-hard-sets: only for tests
  no-direct-work: only for tests
  no-work: only for tests
  rare-muscle: only for tests
  safeties: only for tests
days:
  - name: A
    exercises:
      - lift: back-squat
        sets: 3
        reps: 5-8
        rest: 3-5 min
        reserve: 1-2
        start: 80
        warm_up: false
      - lift: dumbbell-side-raise
        cluster: { lead: 12-15, rest: 10-15 s, most_sets: 5 }
        start: 6
        warm_up: false
      - lift: barbell-row
        sets: 2
        reps: 6-10
        rest: 3-4 min
        start: 60
        warm_up: false
  - name: B
    exercises:
      - lift: bench-press
        sets: 2
        reps: 5-8
        rest: 3-5 min
        start: 60
        warm_up: false
`;
