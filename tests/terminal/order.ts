/** What a test can tell the driven program. */
export type Order =
  /** Time passes while the program runs. */
  | { readonly do: 'pass'; readonly ms: number }
  /** The machine sleeps. */
  | { readonly do: 'sleep'; readonly ms: number }
  | { readonly do: 'set-wall'; readonly by: number }
  | { readonly do: 'set-zone'; readonly minutes: number }
  /** Writing fails with this error code from the call that comes after so many more. */
  | { readonly do: 'fail'; readonly code: string; readonly after: number }
  | { readonly do: 'mend' }
  /** Somewhere an error is thrown that nobody catches. */
  | { readonly do: 'crash' };
