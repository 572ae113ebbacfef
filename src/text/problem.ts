/** What went wrong, in words for the lifter. Every expected error in holdfast is one of these. */
export interface Problem {
  /** What was found and where, one sentence. */
  what: string;
  /** What was expected, or why it matters, one sentence. */
  why?: string;
  /** What to do about it, one sentence. */
  fix?: string;
}

/** Thrown where the work cannot go on; the command line prints it without a stack trace. */
export class Refusal extends Error {
  readonly problems: readonly Problem[];

  constructor(...problems: readonly Problem[]) {
    super(problems.map(problemText).join('\n'));
    this.name = 'Refusal';
    this.problems = problems;
  }
}

/** What was typed cannot be meant so: the help of the command says what can. */
export class WrongUse extends Refusal {}

/** One problem as text: its sentences on one line. */
export function problemText(problem: Problem): string {
  return [problem.what, problem.why, problem.fix].filter(Boolean).join(' ');
}

/** What `act` gives, or the problem where it is refused. Any other error is a bug and goes on. */
export function orProblem<T>(act: () => T): T | Problem {
  try {
    return act();
  } catch (error) {
    if (error instanceof Refusal) return error.problems[0] ?? { what: error.message };
    throw error;
  }
}
