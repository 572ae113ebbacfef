import { expect, it } from 'vitest';
import { terminalKind } from '../../src/terminal/terminal-kind.ts';

it.each<[string, Record<string, string>, string, boolean]>([
  ['an unknown one', { TERM: 'xterm-256color' }, 'bell', false],
  ['kitty', { TERM: 'xterm-kitty' }, 'osc-99', false],
  ['ghostty', { TERM_PROGRAM: 'ghostty' }, 'osc-9', true],
  ['iTerm2', { TERM_PROGRAM: 'iTerm.app' }, 'osc-9', false],
  ['WezTerm', { TERM_PROGRAM: 'WezTerm' }, 'osc-777', true],
  ['Windows Terminal', { WT_SESSION: 'x' }, 'bell', true],
  ['tmux inside kitty', { TERM: 'xterm-kitty', TMUX: '/tmp/x' }, 'bell', false],
  ['Zellij inside Ghostty', { TERM: 'xterm-ghostty', ZELLIJ: '0' }, 'bell', false],
  ['tmux inside WezTerm', { TERM_PROGRAM: 'WezTerm', TMUX: '/tmp/x' }, 'bell', false],
  ['ConEmu', { ConEmuANSI: 'ON' }, 'bell', true],
  ['ConEmu without its codes', { ConEmuANSI: 'OFF' }, 'bell', false],
  ['foot', { TERM: 'foot-extra' }, 'osc-777', false],
  ['urxvt', { TERM: 'rxvt-unicode-256color' }, 'osc-777', false],
  ['none at all', {}, 'bell', false],
  ['screen', { STY: '1.x', TERM: 'screen' }, 'bell', false],
])('%s', (_, env, notice, progress) => {
  expect(terminalKind(env)).toEqual({ notice, progress });
});
