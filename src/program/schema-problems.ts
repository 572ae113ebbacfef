import * as z from 'zod';
import { nearestKey } from '../text/nearest.ts';
import type { Problem } from '../text/problem.ts';
import type { Path, YamlText } from './read-yaml.ts';
import { shown } from './wrong.ts';
import type { PlacedProblem } from './yaml-traps.ts';

type Issue = z.core.$ZodIssue;

/** The value where it fits its schema, and otherwise everything that is wrong with it. */
export function readPart<S extends z.ZodType>(
  schema: S,
  yaml: YamlText,
  found: unknown,
  path: Path = [],
): { readonly value: z.output<S> | null; readonly problems: readonly PlacedProblem[] } {
  const read = schema.safeParse(found);
  if (read.success) return { value: read.data, problems: [] };
  const problems = read.error.issues.flatMap((issue) => problemsOf(schema, yaml, issue, path));
  return { value: null, problems };
}

function problemsOf(schema: z.ZodType, yaml: YamlText, issue: Issue, root: Path): PlacedProblem[] {
  const path = [...root, ...issue.path];
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(schema, issue.path);
    return issue.keys.map((key) => ({ ...yaml.placeOfKey(path, key), ...unknownKey(key, known) }));
  }
  const found = valueAt(yaml.value, path);
  const problem = words(issue, found);
  const name = path[path.length - 1];
  const isMissing = found === undefined;
  const what =
    typeof name === 'string'
      ? `${name}${isMissing ? '' : ':'} ${problem.what}`
      : sentence(problem.what);
  return [{ ...yaml.placeOf(path), ...problem, what }];
}

function unknownKey(key: string, known: readonly string[]): Problem {
  const near = nearestKey(key, known);
  return {
    what: `${shown(key)} is not a key that can stand here.`,
    fix: near ? `Did you mean "${near}"?` : `Known here: ${known.join(', ')}.`,
  };
}

function words(issue: Issue, found: unknown): Problem {
  if (found === undefined) return { what: 'is missing.', fix: fixOf(issue) ?? 'Write it.' };
  switch (issue.code) {
    case 'custom':
      return { what: issue.message, fix: fixOf(issue) ?? '' };
    case 'too_small':
      return { what: 'there is nothing in the list.', fix: 'Write at least one, after a dash.' };
    case 'too_big':
      return { what: `the list is too long: ${issue.maximum} is the most.`, fix: 'Take some out.' };
    case 'invalid_type':
      return wrongShape(issue.expected, found);
    default:
      return { what: issue.message };
  }
}

function wrongShape(expected: string, found: unknown): Problem {
  const glued = typeof found === 'string' ? /^([a-z_]+):(?=\S)/.exec(found) : null;
  if (glued) {
    return {
      what: `there is no space after the colon in ${shown(found)}.`,
      fix: `Write "${glued[1]}: " with a space behind the colon.`,
    };
  }
  return expected === 'array'
    ? { what: `${shown(found)} is not a list.`, fix: 'Begin each entry on a line with a dash.' }
    : {
        what: `${shown(found)} stands where keys should.`,
        fix: 'Write "key: value" lines, indented below.',
      };
}

function fixOf(issue: Issue): string | null {
  const fix = issue.code === 'custom' ? issue.params?.fix : null;
  return typeof fix === 'string' ? fix : null;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The keys that a schema knows at a path. */
function keysAt(schema: z.ZodType, path: Path): readonly string[] {
  let here: z.core.$ZodType = schema;
  for (const step of path) here = childOf(bare(here), step) ?? here;
  here = bare(here);
  return here instanceof z.ZodObject ? Object.keys(here.shape) : [];
}

const bare = (schema: z.core.$ZodType): z.core.$ZodType =>
  schema instanceof z.ZodOptional ? bare(schema.def.innerType) : schema;

function childOf(schema: z.core.$ZodType, step: PropertyKey): z.core.$ZodType | undefined {
  if (schema instanceof z.ZodObject) return schema.shape[step as string];
  if (schema instanceof z.ZodArray) return schema.element;
  if (schema instanceof z.ZodRecord) return schema.valueType;
  return undefined;
}

/** The plain value at a path; undefined where there is none. */
export function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step))
      return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}
