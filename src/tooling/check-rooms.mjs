import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join, posix } from 'node:path';
import ts from 'typescript';
import { ROOT } from './root.mjs';

/** Data flow from left to right: a room imports only from itself and from rooms before it. */
const FLOW = [
  'text',
  'training',
  'program',
  'strength',
  'progression',
  'session',
  'journal',
  'cut',
  'rehearsal',
  'report',
];
const EDGES = [...FLOW, 'settings', 'terminal', 'version'];

/** @type {Record<string, readonly string[]>} */
const MAY_IMPORT = {
  ...Object.fromEntries(FLOW.map((room, place) => [room, FLOW.slice(0, place)])),
  version: [],
  settings: ['text', 'training'],
  terminal: ['text'],
  lifter: EDGES,
  ui: [...EDGES, 'lifter'],
  commands: [...EDGES, 'lifter', 'ui'],
  cli: [...EDGES, 'lifter', 'ui', 'commands'],
  tooling: [],
};

/**
 * Where Node's own modules may be imported: a whole room, or only the files and folders named.
 * @type {Record<string, true | readonly string[]>}
 */
const TOUCHES_NODE = {
  program: ['read-file.ts', 'write-file.ts'],
  journal: ['disk/'],
  settings: true,
  terminal: true,
  lifter: true,
  commands: true,
  cli: true,
  tooling: true,
};

/**
 * Libraries that bring a screen, a disk or a command line with them, and the rooms made for them.
 * @type {Record<string, readonly string[]>}
 */
const CONFINED = {
  ink: ['ui'],
  'ink-text-input': ['ui'],
  react: ['ui'],
  preact: ['report'],
  'preact-render-to-string': ['report'],
  conf: ['settings'],
  commander: ['commands', 'cli'],
  rolldown: ['tooling'],
  typescript: ['tooling'],
};

/** Rooms that may read a clock; all others are told the time. */
const READS_CLOCK = ['lifter', 'tooling'];

/**
 * @param {string} root the folder that holds `src/`
 * @returns {{ files: number, rooms: string[], faults: string[] }}
 */
export function checkRooms(root) {
  const faults = /** @type {string[]} */ ([]);
  const rooms = /** @type {string[]} */ ([]);
  let files = 0;
  for (const { room, paths } of roomsUnder(root)) {
    rooms.push(room);
    files += paths.length;
    if (!MAY_IMPORT[room]) faults.push(`src/${room}: not a room of the project`);
    else if (paths.length === 0) faults.push(`src/${room}: no file was seen in this room`);
    else for (const path of paths) faults.push(...faultsOf(root, room, path));
  }
  if (files === 0) faults.push('src: no file was seen');
  faults.push(...circlesIn(root), ...namesTwice(root));
  return { files, rooms, faults };
}

/**
 * Files that import each other, types included: none of them can be read first. What is loaded only
 * when it is needed (`import()`) counts for nothing here.
 * @param {string} root
 * @returns {string[]}
 */
function circlesIn(root) {
  /** @type {Set<string>} */
  const clear = new Set();
  /** @type {string[]} */
  const found = [];
  /**
   * @param {string} path
   * @param {string[]} way
   */
  const walk = (path, way) => {
    const since = way.indexOf(path);
    if (since >= 0) found.push([...way.slice(since), path].join(' → '));
    if (since >= 0 || clear.has(path) || !existsSync(join(root, path))) return;
    for (const next of importedBy(root, path)) walk(next, [...way, path]);
    clear.add(path);
  };
  for (const path of sourcesUnder(root, 'src')) walk(path, []);
  return found.map((circle) => `imports go in a circle: ${circle}`);
}

/**
 * @param {string} root
 * @param {string} path
 * @returns {string[]} files of the project
 */
function importedBy(root, path) {
  return ts
    .createSourceFile(path, readFileSync(join(root, path), 'utf8'), ts.ScriptTarget.Latest)
    .statements.filter(
      (statement) => ts.isImportDeclaration(statement) || ts.isExportDeclaration(statement),
    )
    .flatMap(({ moduleSpecifier: from }) => (from && ts.isStringLiteral(from) ? [from.text] : []))
    .filter((name) => name.startsWith('.'))
    .map((name) => posix.normalize(posix.join(posix.dirname(path), name)))
    .filter((target) => target.startsWith('src/'));
}

/** What every command or component exports under one name. */
const SHARED_NAMES = ['run', 'Props'];

/**
 * One name means one thing: an exported name stands in one file.
 * @param {string} root
 * @returns {string[]}
 */
function namesTwice(root) {
  /** @type {Map<string, string[]>} */
  const homes = new Map();
  for (const path of existsSync(join(root, 'src')) ? sourcesUnder(root, 'src') : []) {
    const text = readFileSync(join(root, path), 'utf8');
    const exported = text.matchAll(
      /^export (?:async )?(?:const|function|interface|type|class) (\w+)/gm,
    );
    for (const [, name = ''] of exported) homes.set(name, [...(homes.get(name) ?? []), path]);
  }
  return [...homes]
    .filter(([name, paths]) => new Set(paths).size > 1 && !SHARED_NAMES.includes(name))
    .map(
      ([name, paths]) => `${name} is exported by ${[...new Set(paths)].toSorted().join(' and ')}`,
    );
}

/**
 * A room is a folder of `src/`, or a single file that lies beside them.
 * @param {string} root
 */
function roomsUnder(root) {
  const entries = readdirSync(join(root, 'src'), { withFileTypes: true });
  return entries.map((entry) => {
    const path = `src/${entry.name}`;
    return entry.isDirectory()
      ? { room: entry.name, paths: sourcesUnder(root, path) }
      : { room: entry.name.replace(/\.tsx?$/, ''), paths: [path] };
  });
}

/**
 * @param {string} root
 * @param {string} folder
 */
function sourcesUnder(root, folder) {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mts|mjs|js)$/.test(name))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`);
}

/**
 * @param {string} root
 * @param {string} room
 * @param {string} path
 */
function faultsOf(root, room, path) {
  const text = readFileSync(join(root, path), 'utf8');
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const place = (/** @type {number} */ position) =>
    `${path}:${source.getLineAndCharacterOfPosition(position).line + 1}`;
  const { importedFiles } = ts.preProcessFile(text, true, true);
  const imports = importedFiles.flatMap(({ fileName, pos }) => {
    const fault = importFault(root, room, path, fileName);
    return fault ? [`${place(pos)}: ${fault}`] : [];
  });
  if (READS_CLOCK.includes(room)) return imports;
  return [
    ...imports,
    ...unrepeatable(source).map(
      (node) => `${place(node.getStart())}: ${node.getText()} – time and chance are arguments here`,
    ),
  ];
}

/**
 * @param {string} root
 * @param {string} room
 * @param {string} path
 * @param {string} wanted
 * @returns {string | null}
 */
function importFault(root, room, path, wanted) {
  if (wanted.startsWith('.')) {
    const target = posix.normalize(posix.join(posix.dirname(path), wanted));
    if (path === 'src/commands/version.ts' && target === 'package.json') return null;
    if (!target.startsWith('src/')) return `${room} must not import ${wanted} from outside src/`;
    if (!existsSync(join(root, target))) return `imports ${wanted}, which is not there`;
    const other = (target.split('/')[1] ?? '').replace(/\.tsx?$/, '');
    if (other === room || MAY_IMPORT[room]?.includes(other)) return null;
    return `${room} must not import ${other} (${wanted})`;
  }
  if (isBuiltin(wanted)) {
    return mayTouchNode(room, path) ? null : `${room} must not import ${wanted} in this file`;
  }
  const library = wanted.split('/', wanted.startsWith('@') ? 2 : 1).join('/');
  const homes = CONFINED[library];
  return !homes || homes.includes(room)
    ? null
    : `${room} must not import ${wanted}: only ${homes.join(' and ')} may`;
}

/**
 * @param {string} room
 * @param {string} path
 */
function mayTouchNode(room, path) {
  const allowed = TOUCHES_NODE[room];
  if (allowed === undefined || allowed === true) return allowed === true;
  return allowed.some((name) =>
    name.endsWith('/') ? path.startsWith(`src/${room}/${name}`) : path === `src/${room}/${name}`,
  );
}

/**
 * Every place that reads a clock or draws a random number.
 * @param {ts.SourceFile} source
 */
function unrepeatable(source) {
  const banned = /^(globalThis\.)?(Date\.now|performance\.now|Math\.random|Temporal\.Now)$/;
  const found = /** @type {ts.Node[]} */ ([]);
  /** @param {ts.Node} node */
  const visit = (node) => {
    const isNow = ts.isPropertyAccessExpression(node) && banned.test(node.getText());
    const isToday =
      (ts.isNewExpression(node) || ts.isCallExpression(node)) &&
      node.expression.getText() === 'Date' &&
      (node.arguments ?? []).length === 0;
    if (isNow || isToday) found.push(node);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

if (import.meta.filename === process.argv[1]) {
  const { files, rooms, faults } = checkRooms(ROOT);
  for (const fault of faults) console.error(fault);
  console.log(`${files} files in ${rooms.length} rooms seen, ${faults.length} faults`);
  if (faults.length > 0) process.exitCode = 1;
}
