import { Box, useIsScreenReaderEnabled } from 'ink';
import { useSyncExternalStore } from 'react';
import type { Bench } from '../workbench/bench.ts';
import { frameOf } from './frame.ts';
import { line } from './line.ts';
import { Lines } from './parts/lines.tsx';
import { NoteField } from './parts/note-field.tsx';
import { spokenLines } from './spoken/spoken-lines.ts';
import type { Store } from './store.ts';
import { marginOf } from './taps.ts';

export interface AppProps {
  readonly store: Store;
  readonly bench: Bench;
}

/** The whole screen: a view of the store and nothing else. */
export function App({ store, bench }: AppProps) {
  const model = useSyncExternalStore(store.subscribe, store.model);
  const speaks = useIsScreenReaderEnabled();
  const { theme } = model.choices;
  if (speaks) {
    const noting = model.ui.screen.kind === 'note';
    return (
      <Box flexDirection='column'>
        <Lines lines={spokenLines(model, bench).map((text) => line(text))} theme='plain' />
        {noting ? <NoteField onSubmit={store.note} /> : null}
      </Box>
    );
  }
  const { lines, field } = frameOf(model, bench);
  if (field === null) return <Lines lines={lines} theme={theme} />;
  const margin = marginOf(model.size.columns);
  return (
    <Box flexDirection='column'>
      <Lines lines={lines.slice(0, field)} theme={theme} />
      <Box height={1} marginLeft={margin} width={model.size.columns - 2 * margin}>
        <NoteField onSubmit={store.note} />
      </Box>
      <Lines lines={lines.slice(field + 1)} theme={theme} />
    </Box>
  );
}
