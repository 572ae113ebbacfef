import { aimInForce, pauseOn } from '../cut/aim-in-force.ts';
import { reviewReason } from '../cut/cut-rules.ts';
import { aboutPause } from '../cut/judge-in-force.ts';
import type { Program } from '../program/program.ts';
import type { Reason } from '../training/rule.ts';
import type { Lifter } from './open-lifter.ts';

type Of = Pick<Lifter, 'program' | 'settings' | 'journal' | 'today'>;

/**
 * The program as it is trained by today: a cut that is paused, or that the lifter must not be led
 * through, is maintained.
 * @throws Refusal with everything that is wrong with the file.
 */
export function programInForce(lifter: Of): Program {
  const program = lifter.program();
  return { ...program, aim: aimInForce(questionOf(lifter, program)) };
}

/** Why a cut is not trained as one, where the lifter should know; empty otherwise. */
export function aboutAim(lifter: Of): Reason[] {
  const program = lifter.program();
  if (program.aim !== 'cut') return [];
  const { weightAdvice } = lifter.settings().settings;
  if (weightAdvice === 'ask') return [reviewReason('cut-not-answered')];
  const { decisions, today } = questionOf(lifter, program);
  const pause = weightAdvice === 'yes' ? pauseOn(decisions, today) : null;
  return pause ? [aboutPause(pause)] : [];
}

const questionOf = (lifter: Of, program: Program) => ({
  program,
  weightAdvice: lifter.settings().settings.weightAdvice === 'yes',
  decisions: lifter.journal().history().decisions,
  today: lifter.today(),
});
