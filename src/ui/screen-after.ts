import type { Bench } from '../workbench/bench.ts';
import { reviewScreen } from './review-screen.ts';
import type { Screen } from './ui-state.ts';

/** Where a change of the past leads to. */
export type Destination = 'preview' | 'review' | 'results' | 'readings' | 'here';

/** The screen after a change, read anew from what is recorded now. */
export function screenAfter(to: Destination, screen: Screen, bench: Bench): Screen {
  switch (to) {
    case 'preview':
      return { kind: 'preview', today: bench.today(), chosen: 0 };
    case 'review':
      return reviewScreen(bench);
    case 'results':
      return resultsAnew(screen, bench);
    case 'readings':
      return readingsScreen(bench);
    case 'here':
      return hereAnew(screen, bench);
  }
}

/** All weigh-ins, as they are now. */
export function readingsScreen(bench: Bench, chosen = 0): Extract<Screen, { kind: 'readings' }> {
  const readings = bench.watch.readings();
  const last = Math.max(0, readings.length - 1);
  return { kind: 'readings', readings, chosen: Math.min(chosen, last) };
}

function hereAnew(screen: Screen, bench: Bench): Screen {
  switch (screen.kind) {
    case 'preview':
      return screenAfter('preview', screen, bench);
    case 'weigh':
      return { ...screen, weighing: bench.watch.weighing(screen.weighing.instead) };
    case 'readings':
      return readingsScreen(bench, screen.chosen);
    case 'lifts':
      return { ...screen, lifts: bench.watch.lifts(screen.query) };
    default:
      return resultsAnew(screen, bench);
  }
}

/** From a screen behind the results of a lift: those again, or all lifts once it has no more. */
function resultsAnew(screen: Screen, bench: Bench): Screen {
  const before = resultsBefore(screen);
  if (!before) return screen;
  const { lift, query } = before;
  const results = bench.watch.results(lift, query);
  if (results.length > 0) {
    return { ...before, results, chosen: Math.min(before.chosen, results.length - 1) };
  }
  return { kind: 'lifts', lifts: bench.watch.lifts(query), query, chosen: 0 };
}

function resultsBefore(screen: Screen) {
  switch (screen.kind) {
    case 'results':
      return screen;
    case 'past-session':
      return screen.back;
    case 'correct':
    case 'delete':
      return screen.back.back;
    default:
      return null;
  }
}
