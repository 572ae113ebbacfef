export type NamedKey =
  | 'space'
  | 'enter'
  | 'esc'
  | 'tab'
  | 'shift-tab'
  | 'backspace'
  | 'delete'
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'home'
  | 'end'
  | 'page-up'
  | 'page-down'
  | 'ctrl-c'
  | 'ctrl-d'
  | 'ctrl-l'
  | 'ctrl-z';

/** One thing that the lifter did at the keyboard or on the screen. */
export type Key =
  | { readonly kind: 'text'; readonly text: string; readonly repeat?: true }
  /** `repeat`: the terminal says that the key was held, not pressed again. */
  | { readonly kind: 'named'; readonly name: NamedKey; readonly repeat?: true }
  /** A press on the screen; both count from 1 at the top left. */
  | { readonly kind: 'tap'; readonly column: number; readonly row: number }
  /** Pasted text, without control characters. */
  | { readonly kind: 'paste'; readonly text: string };
