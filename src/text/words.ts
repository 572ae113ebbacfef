/** `side-delts` as it reads in a sentence. */
export const keyWords = (key: string): string => key.replaceAll('-', ' ');

/** `1 set`, `3 sets`, `8.5 sets`: `one` is what one is called; the count of a fact may be anything. */
export const howMany = (count: unknown, one: string): string =>
  `${count} ${one}${count === 1 ? '' : 's'}`;

/** `a`, `a and b`, `a, b and c`. */
export const andText = (words: readonly string[]): string =>
  words.length < 2
    ? words.join('')
    : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
