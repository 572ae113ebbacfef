import { onTestFinished } from 'vitest';
import { Home, type Size } from './home.ts';
import type { Order } from './order.ts';
import type { Terminal } from './terminal.ts';
import { TINY_PROGRAM } from './tiny-program.ts';

/** Wednesday 25 November 2026, 17:00 UTC. */
export const WALL = Date.UTC(2026, 10, 25, 17, 0);

export interface Opening {
  readonly home?: Home;
  readonly program?: string;
  readonly args?: readonly string[];
  readonly size?: Size;
  readonly env?: Record<string, string>;
  /** Epoch ms at the start. */
  readonly wall?: number;
}

export interface DrivenSession {
  readonly home: Home;
  readonly terminal: Terminal;
  /** Time passes while the program runs, in seconds. */
  readonly pass: (seconds: number) => Promise<void>;
  readonly order: (order: Order) => Promise<void>;
}

/** A lifter's home that is thrown away with the test. */
export function aHome(options: ConstructorParameters<typeof Home>[0] = {}): Home {
  const home = new Home(options);
  onTestFinished(() => home.throwAway());
  return home;
}

/** The real program in a terminal, on the tiny program. */
export function realSession(opening: Opening = {}): { home: Home; terminal: Terminal } {
  const home = opening.home ?? aHome();
  const args = argsFor(home, opening);
  const terminal = home.open(args, opening.size, opening.env);
  onTestFinished(() => terminal.throwAway());
  return { home, terminal };
}

/** The program with a clock and a disk that obey, in a terminal, on the tiny program. */
export async function drivenSession(opening: Opening = {}): Promise<DrivenSession> {
  const home = opening.home ?? aHome();
  const { terminal, driver } = await home.openDriven(argsFor(home, opening), {
    wall: opening.wall ?? WALL,
    ...(opening.size && { size: opening.size }),
    ...(opening.env && { env: opening.env }),
  });
  onTestFinished(() => {
    terminal.throwAway();
    driver.close();
  });
  terminal.breathe = (ms) => driver.order({ do: 'pass', ms });
  return {
    home,
    terminal,
    pass: (seconds) => driver.order({ do: 'pass', ms: seconds * 1000 }),
    order: driver.order,
  };
}

const argsFor = (home: Home, { program = TINY_PROGRAM, args = [] }: Opening): string[] => [
  '--program',
  home.program(program),
  ...args,
];
