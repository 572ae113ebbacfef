import * as z from 'zod';

/** What `settings --json` prints. */
export const settingsJsonSchema = z.object({
  schema: z.literal(1),
  program: z.string().nullable().meta({ description: 'file of the last session' }),
  settings: z.record(z.string(), z.string()).meta({ description: 'values by name' }),
});

export type SettingsJson = z.infer<typeof settingsJsonSchema>;
