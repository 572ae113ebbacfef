/** How a terminal shows a desktop notification: the number of its OSC sequence, or only the bell. */
export type NoticeStyle = 'osc-9' | 'osc-777' | 'osc-99' | 'bell';

export interface TerminalKind {
  readonly notice: NoticeStyle;
  /** Understands OSC 9;4. Elsewhere that sequence could show up as a notification. */
  readonly progress: boolean;
}

type Variables = Readonly<Record<string, string | undefined>>;

interface Row extends TerminalKind {
  readonly is: (env: Variables) => boolean;
}

const program = (name: string) => (env: Variables) => env.TERM_PROGRAM === name;

/** First match wins. What each understands is from its own documentation, remembered. */
const TERMINALS: readonly Row[] = [
  // A multiplexer passes these on only when told to; the bell always gets through.
  { is: (env) => Boolean(env.TMUX || env.STY || env.ZELLIJ), notice: 'bell', progress: false },
  { is: (env) => env.TERM === 'xterm-kitty', notice: 'osc-99', progress: false },
  {
    is: (env) => env.TERM === 'xterm-ghostty' || program('ghostty')(env),
    notice: 'osc-9',
    progress: true,
  },
  { is: program('WezTerm'), notice: 'osc-777', progress: true },
  { is: program('iTerm.app'), notice: 'osc-9', progress: false },
  { is: (env) => Boolean(env.WT_SESSION), notice: 'bell', progress: true },
  { is: (env) => env.ConEmuANSI === 'ON', notice: 'bell', progress: true },
  { is: (env) => /^foot/.test(env.TERM ?? ''), notice: 'osc-777', progress: false },
  { is: (env) => /^rxvt-unicode/.test(env.TERM ?? ''), notice: 'osc-777', progress: false },
];

/** What the terminal named by the environment understands; an unknown one gets nothing but the bell. */
export function terminalKind(env: Variables): TerminalKind {
  const { notice, progress } = TERMINALS.find((row) => row.is(env)) ?? {
    notice: 'bell',
    progress: false,
  };
  return { notice, progress };
}
