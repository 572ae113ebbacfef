import stringWidth from 'string-width';
import { cutTo } from './table.ts';

/** `text` broken at spaces into lines of at most `width` columns; later lines start with `indent`. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line.trim() !== '' && stringWidth(longer) > width) {
      lines.push(line);
      line = indent + word;
    } else {
      line = line.trim() === '' ? line + word : longer;
    }
  }
  if (line !== '') lines.push(line);
  return lines.map((each) => cutTo(each, width));
}
