import { Box, render, Text } from 'ink';
import { useSyncExternalStore } from 'react';
import { frameOf } from '../../src/ui/frame.ts';
import { textOf } from '../../src/ui/line.ts';
import { Player } from '../ui/player.ts';
import { printTickTimes, sink, size, TICKS } from './tick-times.ts';

/**
 * A bare Ink app: it draws a picture a tick, each line as a text, and knows nothing else. With
 * `screen` as its last argument the pictures are those of the program in a rest, drawn beforehand;
 * else they are one line of text.
 */
const player = new Player(size).atFirstSet().keys('  ');
const pictures = Array.from({ length: TICKS + 1 }, (_, second) => {
  if (process.argv.at(-1) !== 'screen') return [`rest ${second}`];
  player.wait(1);
  return frameOf(player.store.model(), player.scene.coach).lines.map(textOf);
});

const listeners = new Set<() => void>();
let shown = 0;

function App() {
  const lines = useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => pictures[shown] ?? [],
  );
  return (
    <Box flexDirection='column'>
      {lines.map((text, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place on the screen.
        <Text key={row}>{text || ' '}</Text>
      ))}
    </Box>
  );
}

render(<App />, {
  stdout: sink,
  interactive: true,
  patchConsole: false,
  incrementalRendering: true,
  alternateScreen: true,
});
printTickTimes(() => {
  shown += 1;
  for (const listener of listeners) listener();
});
