import { render, Text, useApp, useInput } from 'ink';

/** The least that an Ink app is: two lines, and a key that leaves it. */
function Hello() {
  const { exit } = useApp();
  useInput((key) => {
    if (key === 'q') exit();
  });
  return <Text>hello{'\n'}space begin</Text>;
}

render(<Hello />);
