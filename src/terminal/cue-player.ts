import { safeText } from '../text/safe-text.ts';
import { type Cue, type CueChoices, cueScore } from './cue.ts';
import { FLASH_OFF, FLASH_ON } from './modes.ts';
import type { SpeechProgram } from './speech.ts';
import type { NoticeStyle } from './terminal-kind.ts';

const BEL = '\u0007';
const ST = '\u001b\\';

/** Long enough to be seen from the corner of an eye. */
const FLASH_MS = 120;
/** No more than three flashes a second, whatever is asked for (WCAG 2.3.1). */
const FLASH_GAP_MS = 340;
/** Between two strokes of the bell that should be heard as two. */
const BELL_GAP_MS = 220;

export interface CuePorts {
  readonly write: (bytes: string) => void;
  /** Starts a program without a shell and without waiting; failure is silent. */
  readonly spawn: (command: string, args: readonly string[]) => void;
  readonly after: (ms: number, act: () => void) => () => void;
  /** Epoch ms. */
  readonly now: () => number;
}

export interface CuePlayer {
  readonly play: (cue: Cue, choices: CueChoices) => void;
  /** Calls off what is still to come. */
  readonly stop: () => void;
}

/** Plays cues on the channels that the lifter chose: bell, flash, speech, notification. */
export function cuePlayer(
  ports: CuePorts,
  speech: SpeechProgram | null,
  notice: NoticeStyle,
): CuePlayer {
  const waiting = new Set<() => void>();
  let lastFlash = Number.NEGATIVE_INFINITY;
  const later = (ms: number, act: () => void) => {
    const callOff = ports.after(ms, () => {
      waiting.delete(callOff);
      act();
    });
    waiting.add(callOff);
  };
  const flash = () => {
    if (ports.now() - lastFlash < FLASH_GAP_MS) return;
    lastFlash = ports.now();
    ports.write(FLASH_ON);
    later(FLASH_MS, () => ports.write(FLASH_OFF));
  };
  return {
    play: (cue, choices) => {
      const score = cueScore(cue, choices.spoken);
      if (choices.bell && score.bells > 0) ports.write(BEL);
      if (choices.bell && score.bells > 1) later(BELL_GAP_MS, () => ports.write(BEL));
      if (choices.flash && score.flash) flash();
      if (choices.speech && score.say && speech)
        ports.spawn(speech.command, speech.args(score.say));
      if (choices.notification && score.notice) {
        const code = noticeCode(safeText(score.notice), notice);
        // Where a notification is only a bell, one stroke is enough.
        if (code !== BEL || !choices.bell) ports.write(code);
      }
    },
    stop: () => {
      for (const callOff of waiting) callOff();
      waiting.clear();
    },
  };
}

/** The sequence that shows `words` on the desktop. */
export function noticeCode(words: string, style: NoticeStyle): string {
  if (style === 'osc-9') return `\u001b]9;${words}${BEL}`;
  if (style === 'osc-777') return `\u001b]777;notify;holdfast;${words}${BEL}`;
  if (style === 'osc-99') return `\u001b]99;;${words}${ST}`;
  return BEL;
}
