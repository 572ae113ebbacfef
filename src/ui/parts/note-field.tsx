import { Box, Text } from 'ink';
import TextInput from 'ink-text-input';
import { useState } from 'react';

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
