import type { History } from '../journal/history.ts';

/** Gives the notes of a session, by its id. */
export function sessionNotes({
  closed,
}: Pick<History, 'closed'>): (session: string) => readonly string[] {
  let notes: ReadonlyMap<string, readonly string[]> | null = null;
  return (session) => {
    notes ??= new Map(
      closed().map((state) => [
        state.session,
        [...state.notes, ...state.exercises.flatMap((exercise) => exercise.notes)],
      ]),
    );
    return notes.get(session) ?? [];
  };
}
