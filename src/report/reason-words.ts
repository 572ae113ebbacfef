import type { Reason } from '../training/rule.ts';

/** A reason as the lifter reads it. The rooms' rules are joined at the workbench, which hands this in. */
export type ReasonWords = (reason: Reason) => { readonly text: string; readonly source: string };
