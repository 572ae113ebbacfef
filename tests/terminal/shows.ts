import { blockDigits } from '../../src/ui/digits.ts';

/** Does the screen show this in block digits, seven rows high? */
export const shows =
  (digits: string) =>
  (screen: string): boolean => {
    const rows = blockDigits(digits, 78, 7) ?? [];
    const lines = screen.split('\n').map((line) => line.trim());
    const [first = '', ...more] = rows.map((row) => row.trim());
    return lines.some(
      (line, at) => line === first && more.every((row, below) => lines[at + 1 + below] === row),
    );
  };
