export interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly argv: readonly string[];
  readonly stdinIsTerminal: boolean;
  readonly stdoutIsTerminal: boolean;
}

export interface Environment {
  readonly colour: boolean;
  /** Can the full-screen program run here? */
  readonly interactive: boolean;
  readonly screenReader: boolean;
  /** Variables to set before Ink is imported; undefined removes one. */
  readonly variables: Readonly<Record<string, string | undefined>>;
}

/**
 * What the terminal can do, from the command line, the environment and the streams. Must be in
 * force before Ink is imported: the colour library inside it reads FORCE_COLOR once and ignores
 * NO_COLOR, React picks its build by NODE_ENV, and with CI set Ink draws only the last frame.
 */
export function environment(around: Surroundings): Environment {
  const { env, stdinIsTerminal, stdoutIsTerminal } = around;
  const dumb = env.TERM === 'dumb';
  const interactive = stdinIsTerminal && stdoutIsTerminal && !dumb;
  const colour = wantsColour(around, dumb);
  return {
    colour,
    interactive,
    screenReader: env.INK_SCREEN_READER === 'true',
    variables: {
      NODE_ENV: 'production',
      ...(colour ? {} : { FORCE_COLOR: '0' }),
      ...(interactive ? { CI: undefined } : {}),
    },
  };
}

/** The first that speaks wins: option, NO_COLOR, FORCE_COLOR, TERM=dumb, is it a terminal. */
function wantsColour({ env, argv, stdoutIsTerminal }: Surroundings, dumb: boolean): boolean {
  const end = argv.indexOf('--');
  const options = end < 0 ? argv : argv.slice(0, end);
  if (options.includes('--no-color')) return false;
  if (env.NO_COLOR) return false;
  if (env.FORCE_COLOR !== undefined) return !['0', 'false'].includes(env.FORCE_COLOR);
  return !dumb && stdoutIsTerminal;
}
