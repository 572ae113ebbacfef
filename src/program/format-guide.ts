import * as z from 'zod';
import { CATALOGUE } from './catalogue.ts';
import { CHECK_RULES } from './check/check-rules.ts';
import { programSchema } from './program-schema.ts';

/** The parts of a JSON Schema that the guide reads. */
interface Schema {
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: Schema | boolean;
  readonly enum?: readonly (string | number)[];
  readonly examples?: readonly (string | number)[];
  readonly type?: string;
  readonly minimum?: number;
  readonly maximum?: number;
}

/** The program format in words, in Markdown: made from the schema, the catalogue and the rules. */
export function formatGuide(): string {
  const program = programJsonSchema() as Schema;
  const day = program.properties?.days?.items ?? {};
  const exercise = day.properties?.exercises?.items ?? {};
  const cluster = exercise.properties?.cluster ?? {};
  const lift = entryOf(program.properties?.lifts);
  return [
    INTRODUCTION,
    section('The program', program),
    section('A day', day),
    section('An exercise', exercise),
    `It has \`sets\` and \`reps\` (or \`seconds\`), or a \`cluster\`.`,
    section('A cluster', cluster),
    section('A lift of your own', lift),
    `\`trains\` names muscles: ${codes(Object.keys(lift.properties?.trains?.properties ?? {}))}.`,
    '## What the check looks for',
    'A finding that you have thought about is accepted by its name, with your reason: `accept: { compound-rest: I have half an hour }`.',
    table(
      ['name', 'how well founded', 'source'],
      CHECK_RULES.map(({ key, standing, source }) => [code(key), standing, source]),
    ),
    '## The lifts of the catalogue',
    table(
      ['lift', 'name', 'loading', 'trains directly', 'helps'],
      [...CATALOGUE.values()].map(({ key, name, loading, trains }) => [
        code(key),
        name,
        loading,
        musclesAt(trains, 1),
        musclesAt(trains, 0.5),
      ]),
    ),
  ].join('\n\n');
}

const INTRODUCTION = `# Programs

A program is a YAML file: what is done on which day. Copy one of the files here and change it, or
write your own:

\`\`\`yaml
# yaml-language-server: $schema=./program.schema.json
name: Lean spring
unit: kg
aim: cut
days_per_week: 3
days:
  - name: A
    exercises:
      - lift: back-squat
        sets: 3
        reps: 5-8
        rest: 3-5 min
        reserve: 1-2
        start: 80
      - lift: dumbbell-side-raise
        cluster: { lead: 12-15, rest: 10-15 s, most_sets: 5 }
        start: 8
      - lift: plank
        sets: 2
        seconds: 30-60
lifts:
  log-press:
    name: Log press
    loading: free
    kind: compound
    trains: { front-delts: 1, triceps: 0.5 }
\`\`\`

Indent with spaces. A range is two numbers with a hyphen; a rest has \`s\` or \`min\` behind it; a load
is a number in the program's unit, or has \`kg\` or \`lb\` behind it. The first line lets editors
complete and check the file by the schema beside it. A list of all mistakes, each with line and
column, is printed when a file cannot be read.`;

function section(title: string, { description, properties, required = [] }: Schema): string {
  const rows = Object.entries(properties ?? {}).map(([key, schema]) => [
    code(key),
    required.includes(key) ? 'yes' : '',
    [schema.description, valuesOf(schema)].filter(Boolean).join(' '),
  ]);
  const words = description ? [description] : [];
  return [`## ${title}`, ...words, table(['key', 'needed', 'what it is'], rows)].join('\n\n');
}

function valuesOf({ enum: words, examples, minimum, maximum, type }: Schema): string {
  if (words && words.length > 1) return `One of ${codes(words)}.`;
  if (examples) return `Such as ${codes(examples)}.`;
  if (type === 'integer' || type === 'number') return `From ${minimum} to ${maximum}.`;
  return '';
}

const entryOf = (schema: Schema | undefined): Schema =>
  typeof schema?.additionalProperties === 'object' ? schema.additionalProperties : {};

const musclesAt = (trains: Readonly<Record<string, number | undefined>>, share: number): string =>
  Object.keys(trains)
    .filter((muscle) => trains[muscle] === share)
    .join(', ');

const code = (text: string | number): string => `\`${text}\``;

const codes = (words: readonly (string | number)[]): string => words.map(code).join(', ');

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/** The JSON Schema of a program file, in the draft that editors know best, to complete and check it. */
export function programJsonSchema(): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(programSchema(), { target: 'draft-7', io: 'input' });
  return { ...schema, title: 'Program for holdfast' };
}
