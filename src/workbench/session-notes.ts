import type { History } from '../journal/history.ts';

/** Gives the notes of a session, by its id. */
export function sessionNotes({
  closed,
}: Pick<History, 'closed'>): (session: string) => readonly string[] {
  const notes = new Map(
    closed.map((state) => [
      state.session,
      [...state.notes, ...state.exercises.flatMap((exercise) => exercise.notes)],
    ]),
  );
  return (session) => notes.get(session) ?? [];
}
