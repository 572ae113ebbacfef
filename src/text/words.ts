/** `side-delts` as it reads in a sentence. */
export const keyWords = (key: string): string => key.replaceAll('-', ' ');

/** `1 set`, `3 sets`, `8.5 sets`. */
export const setsText = (count: number): string => `${count} ${count === 1 ? 'set' : 'sets'}`;

/** `a`, `a and b`, `a, b and c`. */
export const andText = (words: readonly string[]): string =>
  words.length < 2
    ? words.join('')
    : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
