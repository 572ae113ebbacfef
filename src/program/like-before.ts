/**
 * A YAML text written by a program, with the lines that it did not change as they were: comments
 * aligned by spaces, line ends and a byte order mark are lost in writing and come back here.
 */
export function likeBefore(before: string, written: string): string {
  const ends = before.includes('\r\n') ? '\r\n' : '\n';
  const originals = new Map<string, string[]>();
  for (const line of before.replace(/^\ufeff/, '').split(/\r?\n/)) {
    const lines = originals.get(collapsed(line));
    if (lines) lines.push(line);
    else originals.set(collapsed(line), [line]);
  }
  const lines = written.split('\n').map((line) => {
    const original = originals.get(collapsed(line));
    // Of lines that read the same the first is the first, and the last stays for any more.
    const found = original && original.length > 1 ? original.shift() : original?.[0];
    return found ?? line.replace(/^\s+$/, '');
  });
  return `${before.startsWith('\ufeff') ? '\ufeff' : ''}${lines.join(ends)}`;
}

/** A line without what the width of spaces before a comment and at the end adds to it. */
const collapsed = (line: string): string => line.replace(/\s+#/, ' #').trimEnd();
