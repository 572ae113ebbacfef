import * as z from 'zod';

/** What `doctor --json` prints. */
export const doctorSchema = z.object({
  schema: z.literal(1),
  checked: z.array(
    z.object({
      what: z.enum(['settings', 'journal', 'gear', 'program']),
      place: z.string(),
      state: z.enum(['fine', 'repaired', 'not-repaired']),
      words: z.array(z.string()).meta({ description: 'what was found and done' }),
    }),
  ),
});

export type DoctorJson = z.infer<typeof doctorSchema>;
