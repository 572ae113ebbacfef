import type { Key, NamedKey } from '../terminal/key-decoder.ts';

const BYTES: Readonly<Partial<Record<NamedKey, string>>> = {
  space: ' ',
  enter: '\r',
  backspace: '\u007f',
  delete: '\u001b[3~',
  left: '\u001b[D',
  right: '\u001b[C',
};

/** A key in the bytes that a text field reads; null for keys that it should not see. */
export function keyBytes(key: Key): string | null {
  if (key.kind === 'text' || key.kind === 'paste') return key.text;
  return key.kind === 'named' ? (BYTES[key.name] ?? null) : null;
}
