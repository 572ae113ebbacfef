import type { Reason } from '../training/rule.ts';

/** A reason as the lifter reads it. The rooms' rules are joined in the room `lifter`, which hands this in. */
export type ReasonWords = (reason: Reason) => { readonly text: string; readonly source: string };
