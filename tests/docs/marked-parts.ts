/**
 * A document with its generated parts made anew. A part stands between `<!-- made: name -->` and
 * `<!-- end -->`; everything else is left as it is.
 * @throws RangeError for a part that nothing makes.
 */
export function withParts(text: string, make: Readonly<Record<string, () => string>>): string {
  return text.replace(/<!-- made: (\S+) -->\n[\s\S]*?<!-- end -->/g, (_, name: string) => {
    const part = make[name];
    if (!part) throw new RangeError(`Nothing makes the part "${name}".`);
    return `<!-- made: ${name} -->\n${part()}\n<!-- end -->`;
  });
}

/** A Markdown table. */
export function markdownTable(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(headings), line(headings.map(() => '---')), ...rows.map(line)].join('\n');
}
