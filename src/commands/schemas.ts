import type * as z from 'zod';

type Schema = z.ZodType;

/** Documents that other programs may read or write, by the name that `schema` takes. */
export const SCHEMAS: Readonly<
  Record<string, { readonly title: string; readonly load: () => Promise<Schema> }>
> = {
  today: {
    title: 'What "holdfast today --json" prints',
    load: async () => (await import('./today-schema.ts')).todaySchema,
  },
  load: {
    title: 'What "holdfast load --json" prints',
    load: async () => (await import('./load-schema.ts')).loadSchema,
  },
  estimate: {
    title: 'What "holdfast estimate --json" prints',
    load: async () => (await import('./estimate-schema.ts')).estimateSchema,
  },
  weigh: {
    title: 'What "holdfast weigh --json" prints',
    load: async () => (await import('./weigh-schema.ts')).weighSchema,
  },
  review: {
    title: 'What "holdfast review --json" prints',
    load: async () => (await import('./review-schema.ts')).reviewSchema,
  },
  history: {
    title: 'What "holdfast history --json" prints',
    load: async () => (await import('./history-schema.ts')).historySchema,
  },
  export: {
    title: 'What "holdfast export --as json" writes',
    load: async () => (await import('../report/history-json.ts')).historyExportSchema,
  },
  gear: {
    title: 'What "holdfast gear --json" prints',
    load: async () => (await import('./gear-json-schema.ts')).gearJsonSchema,
  },
  settings: {
    title: 'What "holdfast settings --json" prints',
    load: async () => (await import('./settings-schema.ts')).settingsJsonSchema,
  },
  rehearse: {
    title: 'What "holdfast rehearse --json" prints',
    load: async () => (await import('./rehearse-schema.ts')).rehearseSchema,
  },
  check: {
    title: 'What "holdfast check --json" prints',
    load: async () => (await import('./check-schema.ts')).checkSchema,
  },
  lifts: {
    title: 'What "holdfast lifts --json" prints',
    load: async () => (await import('./lifts-schema.ts')).liftsSchema,
  },
  import: {
    title: 'What "holdfast import --json" prints',
    load: async () => (await import('./import-schema.ts')).importSchema,
  },
  amend: {
    title: 'What "holdfast amend --json" prints',
    load: async () => (await import('./amend-schema.ts')).amendSchema,
  },
  doctor: {
    title: 'What "holdfast doctor --json" prints',
    load: async () => (await import('./doctor-schema.ts')).doctorSchema,
  },
};
