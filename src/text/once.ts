/** Makes a value when it is first asked for, and gives the same one from then on. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** Works a value out only when what it is made of is another than the last time. */
export function lastOf<Of extends readonly unknown[], T>(make: (...of: Of) => T): (...of: Of) => T {
  let last: { readonly of: Of; readonly made: T } | null = null;
  return (...of) => {
    if (!last || last.of.some((one, at) => one !== of[at])) last = { of, made: make(...of) };
    return last.made;
  };
}
