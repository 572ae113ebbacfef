import { Box, Text } from 'ink';
import { memo } from 'react';
import type { Line } from './line.ts';
import { THEMES } from './theme.ts';

interface RowProps {
  readonly spans: Line;
  readonly theme: keyof typeof THEMES;
}

const sameRow = (a: RowProps, b: RowProps): boolean =>
  a.theme === b.theme &&
  a.spans.length === b.spans.length &&
  a.spans.every((one, i) => one.text === b.spans[i]?.text && one.role === b.spans[i]?.role);

/** One row; what is too wide is cut, never wrapped. Drawn anew only when it says something new. */
const Row = memo(({ spans, theme }: RowProps) => {
  const styles = THEMES[theme];
  if (spans.length === 0) return <Text> </Text>;
  return (
    <Text wrap='truncate-end'>
      {spans.map(({ text, role }, index) =>
        // A node of its own costs at every frame, so what has no style gets none.
        role === 'plain' ? (
          text
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: spans have no other name.
          <Text key={index} {...styles[role]}>
            {text}
          </Text>
        ),
      )}
    </Text>
  );
}, sameRow);

interface LinesProps {
  readonly lines: readonly Line[];
  readonly theme: keyof typeof THEMES;
}

export function Lines({ lines, theme }: LinesProps) {
  return (
    <Box flexDirection='column'>
      {lines.map((spans, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place on the screen.
        <Row key={row} spans={spans} theme={theme} />
      ))}
    </Box>
  );
}
