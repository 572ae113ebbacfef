import { isPlainLocale, plainText } from '../text/plain.ts';

/**
 * The stream a screen is drawn on: where the locale has nothing but ASCII every sign becomes one of
 * it, in its place and of its width.
 */
export function plainStdout(
  stdout: NodeJS.WriteStream,
  env: Readonly<Record<string, string | undefined>>,
): NodeJS.WriteStream {
  if (!isPlainLocale(env)) return stdout;
  return new Proxy(stdout, {
    get: (stream, name) => {
      const value = Reflect.get(stream, name, stream);
      if (name === 'write') {
        return (chunk: unknown, ...rest: never[]) =>
          stream.write(
            (typeof chunk === 'string' ? plainText(chunk) : chunk) as string,
            ...(rest as []),
          );
      }
      return typeof value === 'function' ? value.bind(stream) : value;
    },
  });
}
