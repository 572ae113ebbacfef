import { render } from 'ink-testing-library';
import { describe, expect, test, vi } from 'vitest';
import { NoteField } from '../../src/ui/app.tsx';
import { BLANK, line, span } from '../../src/ui/line.ts';
import { Lines } from '../../src/ui/lines.tsx';

describe('lines', () => {
  test('each stands in a row of its own, an empty one too', () => {
    const lines = [line('Back squat', 'strong'), BLANK, [span('82.5'), span(' kg')]];
    const { lastFrame, unmount } = render(<Lines lines={lines} theme='plain' />);
    expect(lastFrame()).toBe('Back squat\n\n82.5 kg');
    unmount();
  });

  test('one that is too wide is cut and never wrapped', () => {
    const { lastFrame, unmount } = render(<Lines lines={[line('x'.repeat(140))]} theme='plain' />);
    const frame = lastFrame() ?? '';
    expect(frame).not.toContain('\n');
    expect(frame.endsWith('…')).toBe(true);
    unmount();
  });
});

describe('the note field', () => {
  test('keeps what was typed when enter is pressed', async () => {
    const onSubmit = vi.fn();
    const { stdin, lastFrame, unmount } = render(<NoteField onSubmit={onSubmit} />);
    for (const key of 'knee fine') {
      stdin.write(key);
      await vi.waitFor(() => expect(lastFrame()).toContain(key));
    }
    await vi.waitFor(() => expect(lastFrame()).toContain('knee fine'));
    stdin.write('\r');
    await vi.waitFor(() => expect(onSubmit).toHaveBeenCalledWith('knee fine'));
    unmount();
  });
});
