/** An invented program: a barbell lift, a body weight lift, a cluster and a hold; then a second day. */
export const LEAN_SPRING = `
name: Lean spring
unit: kg
aim: cut
days_per_week: 3
rest: 2-3 min
accept:
  few-hard-sets: two short days for now
  rare-muscle: two short days for now
  no-work: two short days for now
days:
  - name: A
    exercises:
      - lift: back-squat
        sets: 3
        reps: 5-8
        rest: 3-5 min
        reserve: 1-2
        start: 80
      - lift: pull-up
        sets: 2
        reps: 6-10
        rest: 3-5 min
        reserve: 1-2
        start: 5
      - lift: dumbbell-side-raise
        cluster: { lead: 12-15, rest: 10-15 s, most_sets: 5 }
        start: 8
      - lift: plank
        sets: 1
        seconds: 30-60
        rest: 60-90 s
  - name: B
    exercises:
      - lift: bench-press
        sets: 3
        reps: 5-8
        rest: 3-5 min
        reserve: 1-2
        start: 60
      - lift: barbell-row
        sets: 3
        reps: 6-10
        rest: 3-5 min
        reserve: 1-2
        start: 50
`.trimStart();
