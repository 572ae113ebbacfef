import { createInterface } from 'node:readline/promises';
import { problemText, Refusal } from '../text/problem.ts';
import { safeText } from '../text/safe-text.ts';
import type { Call } from './call.ts';
import { KIT_LIST } from './draft-option-rows.ts';

/** One question of a draft, and the option that answers it, too. */
interface Question {
  readonly option: string;
  readonly asks: string;
  /** What enter alone means; null for nothing. */
  readonly usual: string | null;
}

const QUESTIONS: readonly Question[] = [
  {
    option: 'kit',
    asks: `What you own ("holdfast gear --edit" corrects it): ${KIT_LIST}`,
    usual: '6',
  },
  { option: 'days', asks: 'How many days a week, 2 to 4', usual: '3' },
  { option: 'minutes', asks: 'Minutes a session at most', usual: '60' },
  { option: 'aim', asks: 'Aim: cut, maintain or build', usual: 'cut' },
  { option: 'like', asks: 'Lifts that should be in it, with commas between', usual: null },
  { option: 'without', asks: 'Lifts that you cannot or will not do', usual: null },
  {
    option: 'hurts',
    asks: 'Anything that hurts: shoulder, elbow, wrist, back, hip, knee',
    usual: null,
  },
  { option: 'focus', asks: 'Muscles to bring up, such as side-delts', usual: null },
  {
    option: 'best',
    asks: 'Recent bests, such as "back-squat=100kg for 5 leaving 2"',
    usual: null,
  },
];

/** Asks one question after the other until its answer can be read; the answers as options. */
export async function askForDraft(
  { ports, tell, warn }: Pick<Call, 'ports' | 'tell' | 'warn'>,
  usual: Readonly<Record<string, string>>,
  check: (option: string, answer: string) => void,
  isKnown: (option: string) => boolean,
): Promise<Record<string, string>> {
  const lines = createInterface({ input: ports.stdin, output: ports.stdout });
  const answers: Record<string, string> = {};
  try {
    tell('A few questions; enter alone takes what stands in brackets, or nothing.');
    for (const { option, asks, usual: normal } of QUESTIONS) {
      if (isKnown(option)) continue;
      const given = usual[option] ?? normal;
      const prompt = given === null ? `${asks}: ` : `${asks} [${safeText(given)}]: `;
      for (;;) {
        const answer = (await lines.question(prompt)).trim() || given;
        if (answer === null) break;
        const problem = refusalOf(() => check(option, answer));
        if (problem === null) {
          answers[option] = answer;
          break;
        }
        warn(problem);
      }
    }
    return answers;
  } finally {
    lines.close();
  }
}

function refusalOf(act: () => void): string | null {
  try {
    act();
    return null;
  } catch (error) {
    if (error instanceof Refusal) return error.problems.map(problemText).join(' ');
    throw error;
  }
}
