import { aimInForce, pauseOn } from '../cut/aim-in-force.ts';
import { reviewReason } from '../cut/cut-rules.ts';
import { aboutPause } from '../cut/judge-in-force.ts';
import type { Program } from '../program/program.ts';
import type { Reason } from '../training/rule.ts';
import type { Workbench } from './open-workbench.ts';

type Of = Pick<Workbench, 'program' | 'settings' | 'journal' | 'today'>;

/**
 * The program as it is trained by today: a cut that is paused, or that the lifter must not be led
 * through, is maintained.
 * @throws Refusal with everything that is wrong with the file.
 */
export function programInForce(workbench: Of): Program {
  const program = workbench.program();
  return { ...program, aim: aimInForce(questionOf(workbench, program)) };
}

/** Why a cut is not trained as one, where the lifter should know; empty otherwise. */
export function aboutAim(workbench: Of): Reason[] {
  const program = workbench.program();
  if (program.aim !== 'cut') return [];
  const { weightAdvice } = workbench.settings().settings;
  if (weightAdvice === 'ask') return [reviewReason('cut-not-answered')];
  const { decisions, today } = questionOf(workbench, program);
  const pause = weightAdvice === 'yes' ? pauseOn(decisions, today) : null;
  return pause ? [aboutPause(pause)] : [];
}

const questionOf = (workbench: Of, program: Program) => ({
  program,
  weightAdvice: workbench.settings().settings.weightAdvice === 'yes',
  decisions: workbench.journal().history().decisions,
  today: workbench.today(),
});
