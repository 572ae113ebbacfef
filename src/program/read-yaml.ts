import {
  type Document,
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseDocument,
  type Scalar,
  visit,
} from 'yaml';
import type { Place } from './program.ts';
import {
  MOST_DEPTH,
  type PlacedProblem,
  tooDeep,
  unsafeCharacter,
  yamlTraps,
} from './yaml-traps.ts';
import { losesTheWay, yamlWords } from './yaml-words.ts';

export type Path = readonly PropertyKey[];

/** A YAML text as plain data, with the way back from each value to its place. */
export interface YamlText {
  readonly value: unknown;
  /** Where the value at a path stands; of a value that is missing, where its parent does. */
  readonly placeOf: (path: Path) => Place;
  readonly placeOfKey: (path: Path, key: string) => Place;
  /** Numbers that do not mean what they look like, such as `012`. */
  readonly oddNumbers: readonly PlacedProblem[];
}

/** Reads one YAML 1.2 document of plain keys and values; anything else that YAML can do is a problem. */
export function readYaml(text: string): YamlText | readonly PlacedProblem[] {
  const plain = text.replace(/^\ufeff/, '');
  const traps = yamlTraps(plain);
  if (traps.length > 0) return traps;
  const lineCounter = new LineCounter();
  const document = parseDocument(plain, {
    lineCounter,
    version: '1.2',
    uniqueKeys: true,
    strict: true,
    stringKeys: true,
    prettyErrors: false,
  });
  const at = (offset: number): Place => {
    const { line, col } = lineCounter.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const lines = plain.split(/\r?\n/);
  const errors = [...document.errors, ...document.warnings].map(({ code, pos: [start] }) => {
    const place = at(start);
    return { code, place, line: lines[place.line - 1] ?? '' };
  });
  errors.sort((a, b) => a.place.line - b.place.line);
  const lost = errors.findIndex(({ code, line }) => losesTheWay(code, line));
  const faults = (lost < 0 ? errors : errors.slice(0, lost + 1)).map(({ code, place, line }) => ({
    ...place,
    ...yamlWords(code, line),
  }));
  if (faults.length > 0) return firstOfEachLine(faults);
  const { problems, oddNumbers } = walk(document, at);
  if (problems.length > 0) return problems;
  const root = document.contents;
  const placeOfNode = (node: unknown): Place | null =>
    isNode(node) && node.range ? at(node.range[0]) : null;
  return {
    value: document.toJS({ maxAliasCount: 0 }),
    placeOf: (path) => placeOfNode(deepest(root, path)) ?? { line: 1, column: 1 },
    placeOfKey: (path, key) => {
      const parent = deepest(root, path);
      const pair = isMap(parent) ? parent.items.find((item) => keyText(item.key) === key) : null;
      return placeOfNode(pair?.key) ?? placeOfNode(parent) ?? { line: 1, column: 1 };
    },
    oddNumbers,
  };
}

/** One mistake in a line often makes the parser complain of the rest of it. */
function firstOfEachLine(faults: readonly PlacedProblem[]): readonly PlacedProblem[] {
  const seen = new Set<number>();
  return faults
    .filter(({ line }) => !seen.has(line) && seen.add(line))
    .sort((a, b) => a.line - b.line)
    .slice(0, 20);
}

function walk(document: Document.Parsed, at: (offset: number) => Place) {
  const problems: PlacedProblem[] = [];
  const oddNumbers: PlacedProblem[] = [];
  visit(document, {
    Node(_, node, path) {
      const place = at(node.range?.[0] ?? 0);
      if (path.length > 2 * MOST_DEPTH) {
        problems.push(tooDeep(place));
        return visit.BREAK;
      }
      if (isAlias(node) || node.tag !== undefined) {
        problems.push({ ...place, ...yamlWords('BAD_ALIAS', '') });
      } else if (isScalar(node)) {
        const unsafe = typeof node.value === 'string' ? unsafeCharacter(node.value) : null;
        if (unsafe) {
          problems.push({
            ...place,
            what: `The text holds a character that cannot be seen: ${unsafe.name}.`,
            fix: 'Leave it out.',
          });
        }
        if (looksOdd(node)) {
          oddNumbers.push({
            ...place,
            what: `${node.source} is read as the number ${node.value}.`,
            fix: `Write ${node.value} if that is meant.`,
          });
        }
      }
    },
  });
  return { problems, oddNumbers };
}

const looksOdd = ({ value, source }: Scalar): boolean =>
  typeof value === 'number' &&
  source !== undefined &&
  Number.isFinite(value) &&
  !/^[-+]?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(source);

function deepest(root: Node | null, path: Path): unknown {
  let node: unknown = root;
  for (const step of path) {
    const next: unknown = isMap(node)
      ? node.items.find((item) => keyText(item.key) === step)?.value
      : isSeq(node)
        ? node.items[Number(step)]
        : undefined;
    if (!isNode(next)) return node;
    node = next;
  }
  return node;
}

const keyText = (key: unknown): string => (isScalar(key) ? String(key.value) : '');
