import { Box, Text, useIsScreenReaderEnabled } from 'ink';
import TextInput from 'ink-text-input';
import { useState, useSyncExternalStore } from 'react';
import type { Coach } from '../lifter/coach.ts';
import { frameOf } from './frame.ts';
import { line } from './line.ts';
import { Lines } from './lines.tsx';
import { moduleOf } from './screens.ts';
import { spokenLines } from './spoken/spoken-lines.ts';
import type { Store } from './store.ts';
import { marginOf } from './window.ts';

export interface AppProps {
  readonly store: Store;
  readonly coach: Coach;
}

/** The whole screen: a view of the store and nothing else. */
export function App(props: AppProps) {
  return useIsScreenReaderEnabled() ? <Spoken {...props} /> : <Drawn {...props} />;
}

function Drawn({ store, coach }: AppProps) {
  const model = useSyncExternalStore(store.subscribe, store.model);
  const { theme } = model.choices;
  const { lines, field } = frameOf(model, coach);
  if (field === null) return <Lines lines={lines} theme={theme} />;
  const margin = marginOf(model.size.columns);
  return (
    <Box flexDirection='column'>
      <Lines lines={lines.slice(0, field.row)} theme={theme} />
      {/* Of a text that is longer the end stays in sight, where it is typed. */}
      <Box
        flexDirection='column'
        justifyContent='flex-end'
        overflow='hidden'
        height={field.rows}
        marginLeft={margin}
        width={model.size.columns - 2 * margin}
      >
        <Box flexShrink={0} minHeight={field.rows}>
          <NoteField onSubmit={store.note} />
        </Box>
      </Box>
      <Lines lines={lines.slice(field.row + field.rows)} theme={theme} />
    </Box>
  );
}

/** Sentences in place of a picture; drawn anew only when one of them changes. */
function Spoken({ store, coach }: AppProps) {
  const text = useSyncExternalStore(store.subscribe, () =>
    spokenLines(store.model(), coach).join('\n'),
  );
  const noting = useSyncExternalStore(
    store.subscribe,
    () => moduleOf(store.model().ui.screen).field !== undefined,
  );
  return (
    <Box flexDirection='column'>
      <Lines lines={text.split('\n').map((sentence) => line(sentence))} theme='plain' />
      {noting ? <NoteField onSubmit={store.note} /> : null}
    </Box>
  );
}

/** Longest note that is kept in one piece. */
const LONGEST = 500;

interface NoteFieldProps {
  readonly onSubmit: (text: string) => void;
}

/** A line of free text. Its keys come through Ink's stdin, which the app feeds one at a time. */
export function NoteField({ onSubmit }: NoteFieldProps) {
  const [text, setText] = useState('');
  return (
    <Box>
      <Text>{'> '}</Text>
      <TextInput
        value={text}
        onChange={(next) => setText(next.slice(0, LONGEST))}
        onSubmit={onSubmit}
        placeholder='what should be remembered'
      />
    </Box>
  );
}
