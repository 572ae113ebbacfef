import { ask, RUNNER, type Seen, show } from '../outcome.ts';
import { titled } from '../page.ts';
import { backBy, type ScreenModule } from '../screen.ts';
import type { Screen } from '../ui-state.ts';
import { windowOf } from '../window.ts';

type Note = Extract<Screen, { kind: 'note' }>;

function titleOf({ screen, model: { session } }: Seen<Note>): string {
  const of = screen.exercise === null ? undefined : session?.exercises[screen.exercise];
  return of ? `Note: ${of.prescribed.name}` : 'Note';
}

/** A text field lies over it, to which every key goes that is not its own. */
export const NOTE_SCREEN: ScreenModule<Note> = {
  keys: [
    backBy<Note>((acting) => show(acting, RUNNER), { keys: ['esc'] }),
    {
      keys: ['enter'],
      label: 'keep the note',
      footer: 0,
      press: (acting) => ask(acting, { do: 'type', key: { kind: 'named', name: 'enter' } }),
    },
  ],
  lines: (seen, columns, rows) => windowOf(titled(titleOf(seen), null, columns), rows, 0),
  spoken: (seen) => [`${titleOf(seen)}. Type it, then enter.`],
  otherKey: (acting, key) => ask(acting, { do: 'type', key }),
  field: 2,
};
