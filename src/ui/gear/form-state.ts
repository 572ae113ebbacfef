import type { Gear } from '../../training/gear.ts';
import { type FormField, type FormRow, type ListPart, rowsOf } from './form-rows.ts';

/** The form of what the lifter owns. */
export interface FormState {
  readonly gear: Gear;
  /** As it is kept. */
  readonly kept: Gear;
  /** For undo, the latest last. */
  readonly before: readonly Gear[];
  readonly row: number;
  readonly field: number;
  /** What is being typed over the chosen field. */
  readonly typed: string | null;
  /** What is being typed to add things of a part. */
  readonly adding: { readonly part: ListPart; readonly text: string } | null;
  /** Leaving without saving was asked about. */
  readonly asked: boolean;
  readonly help: boolean;
  readonly message: string | null;
}

export const formOf = (gear: Gear): FormState => ({
  gear,
  kept: gear,
  before: [],
  row: 0,
  field: 0,
  typed: null,
  adding: null,
  asked: false,
  help: false,
  message: null,
});

/** Gear is plain data, so that its text tells whether it is another. */
export const isChanged = ({ gear, kept }: FormState): boolean =>
  JSON.stringify(gear) !== JSON.stringify(kept);

export const chosenRow = ({ gear, row }: FormState): FormRow | undefined => rowsOf(gear)[row];

export const chosenField = (state: FormState): FormField | undefined =>
  chosenRow(state)?.fields[state.field];
