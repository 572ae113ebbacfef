import { phaseOf } from './phase.ts';
import type { Model } from './ui-state.ts';
import { countdownText } from './words.ts';

/** Title of the window: the time left, so that a glance at the tab is enough. */
export function titleOf({ session, now }: Model): string {
  if (!session || session.stage.kind === 'closed') return 'holdfast';
  if (session.pausedSince) return 'paused';
  const phase = phaseOf(session, now);
  if (phase.kind === 'resting') return `${countdownText(coarse(phase.leftMs))} rest`;
  if (phase.kind === 'over' || phase.kind === 'lifting') return 'lift';
  return phase.kind === 'all-done' ? 'done' : 'ready';
}

/** In steps of fifteen seconds until the last fifteen: a tab that flickers is noise, and costs bytes. */
const coarse = (ms: number): number => (ms > 15_000 ? Math.ceil(ms / 15_000) * 15_000 : ms);

/** Share of the rest that is over, 0 to 1; null while none runs. */
export function progressOf({ session, now }: Model): number | null {
  const phase = session && !session.pausedSince ? phaseOf(session, now) : null;
  if (phase?.kind !== 'resting') return null;
  const whole = phase.running.rest.to * 1000;
  return whole > 0 ? Math.min(1, phase.elapsedMs / whole) : null;
}
