import { writeSync } from 'node:fs';

const ESC = '\u001b';
const BEL = '\u0007';

/** What the full-screen program switches on beside Ink's alternate screen and hidden cursor. */
export interface ModeWishes {
  /** Report taps. Plain text selection then needs shift in most terminals. */
  readonly taps: boolean;
  /** Does the terminal show progress on its tab or in the task bar? */
  readonly progress: boolean;
}

// 1000 with 1006 and never 1003 alone: a common Android terminal drops taps then.
const TAPS_ON = `${ESC}[?1000h${ESC}[?1006h`;
const TAPS_OFF = `${ESC}[?1006l${ESC}[?1000l`;
const PASTE_ON = `${ESC}[?2004h`;
const PASTE_OFF = `${ESC}[?2004l`;
/**
 * The kitty keyboard protocol, where a terminal knows it: keys tell whether they were held (2), all
 * of them (1 and 8), with the text that they type (16). Each screen has its own stack of flags, so
 * it is switched on after the alternate screen and off before that is left.
 */
export const REPEATS_ON = `${ESC}[>27u`;
export const REPEATS_OFF = `${ESC}[<u`;
const PROGRESS_OFF = `${ESC}]9;4;0${BEL}`;

export const FLASH_ON = `${ESC}[?5h`;
export const FLASH_OFF = `${ESC}[?5l`;

export const tapMode = (on: boolean): string => (on ? TAPS_ON : TAPS_OFF);

/**
 * To be written before the first frame; the window's title is kept on the terminal's stack. The
 * alternate screen starts where the cursor stands, which what was typed ahead may have moved.
 */
export const enterModes = ({ taps }: ModeWishes): string =>
  `\r${ESC}[22;2t${PASTE_ON}${taps ? TAPS_ON : ''}`;

export const ENTER_SCREEN = `${ESC}[?1049h`;

/** Back to the primary screen, with a cursor and without colours. */
export const LEAVE_SCREEN = `${ESC}[?1049l${ESC}[?25h${ESC}[0m`;

/** To the first place of a screen that is emptied: one that knows no other screen still shows what was there. */
export const EMPTY_SCREEN = `${ESC}[H${ESC}[J`;

/**
 * To be written on every way out, whatever was on: every mode that this program may have changed
 * goes back, the primary screen and the cursor included. Writing it twice does no harm.
 */
export const leaveModes = ({ progress }: Pick<ModeWishes, 'progress'>): string =>
  `${REPEATS_OFF}${FLASH_OFF}${TAPS_OFF}${PASTE_OFF}${progress ? PROGRESS_OFF : ''}${titleCode('')}${ESC}[23;2t${LEAVE_SCREEN}`;

/** Sets the window's title. */
export const titleCode = (title: string): string => `${ESC}]2;${title}${BEL}`;

/** Shows `share` (0 to 1) of a rest as progress; null takes it away. */
export const progressCode = (share: number | null): string =>
  share === null ? PROGRESS_OFF : `${ESC}]9;4;1;${Math.round(share * 100)}${BEL}`;

/**
 * Writes to a terminal that may be gone: at once, since nothing is written later, and without a
 * complaint where nobody is left to read it.
 */
export function writeLast({ fd }: { readonly fd?: number }, bytes: string): void {
  if (fd === undefined) return;
  try {
    writeSync(fd, bytes);
  } catch {
    // It is gone.
  }
}
