import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { rolldown } from 'rolldown';
import { minify } from 'rolldown/utils';
import { ROOT } from './root.mjs';

const DAY_MS = 24 * 60 * 60 * 1000;

/** What the licences of the bundled libraries ask to go along with them. */
export const NOTICES = 'NOTICES.txt';

/**
 * What libraries ask for and this program never uses. Ink wants the React developer tools only when
 * told to, and they are not installed; conf checks by a schema, and compares versions, only where it is
 * given schemas and migrations. Zod does the one here and nobody the other, and its validator would be
 * a tenth of the whole build.
 * @type {import('rolldown').Plugin}
 */
const withoutUnused = {
  name: 'without-unused',
  resolveId: {
    filter: { id: /^(react-devtools-core|ajv-formats|ajv\/dist\/2020\.js|semver)$/ },
    handler: () => '\0unused',
  },
  load: {
    filter: { id: /^\0unused$/ },
    handler: () => 'export default {}; export class Ajv2020 {}',
  },
};

/**
 * What libraries do when they are loaded, though it is seldom or never needed: the layout's engine asks
 * the web client of Node, which is slow to load, to decode a text that it holds; the measures of text
 * make segmenters and list all emoji, for the few texts that are not plain; the command line can hand
 * over to programs of its own, and here has none.
 * @type {readonly { of: RegExp, find: RegExp, put: string }[]}
 */
const LATER = [
  {
    of: /\/yoga-wasm-base64-esm\.js$/,
    find: /^/,
    put: 'const fetch = undefined;\n',
  },
  {
    of: /\/(string-width|wrap-ansi)\/index\.js$|\/ink\/build\/line-update\.js$|\/ansi-tokenize\/build\/tokenize\.js$/,
    find: /const segmenter = new Intl\.Segmenter\(.*\);/,
    put: `import { segmenter } from ${JSON.stringify(join(ROOT, 'src/text/graphemes.ts'))};`,
  },
  {
    of: /\/commander\/lib\/command\.js$/,
    find: /import childProcess from 'node:child_process';/,
    put: '',
  },
  {
    of: /\/slice-ansi\/tokenize-ansi\.js$/,
    find: /const GRAPHEME_SEGMENTER = (new Intl\.Segmenter\(.*\));/,
    put: 'let made; const GRAPHEME_SEGMENTER = { segment: (text) => (made ??= $1).segment(text) };',
  },
  {
    of: /\/string-width\/index\.js$/,
    find: /const emojiPrefixRegex = (.*);/,
    put: `let emoji; const emojiPrefixRegex = {
      test: (text) => (emoji ??= $1).test(text),
      exec: (text) => (emoji ??= $1).exec(text),
    };`,
  },
];

/** @type {import('rolldown').Plugin} */
const withLater = {
  name: 'with-later',
  transform(code, id) {
    const changes = LATER.filter(({ of }) => of.test(slashed(id)));
    if (changes.length === 0) return null;
    return changes.reduce((text, { find, put }) => {
      if (!find.test(text)) throw new Error(`${id} holds no ${find} any more.`);
      return text.replace(find, put);
    }, code);
  },
};

/**
 * Ink measures every line of every frame by graphemes, which was a fifth of what a second of a rest
 * cost. Its libraries get the measure of `src/text/columns.ts`, which knows a plain text at a glance
 * and asks the real one for any other.
 * @type {import('rolldown').Plugin}
 */
const withQuickWidths = {
  name: 'with-quick-widths',
  resolveId: {
    filter: { id: /^string-width$/ },
    handler: (_, importer) => (importer?.includes('node_modules') ? '\0quick-widths' : null),
  },
  load: {
    filter: { id: /^\0quick-widths$/ },
    handler: () => `
      import stringWidth from ${JSON.stringify(join(ROOT, 'node_modules/string-width/index.js'))};
      import { columnsOf } from ${JSON.stringify(join(ROOT, 'src/text/columns.ts'))};
      export default (text, options) =>
        options === undefined ? columnsOf(text) : stringWidth(text, options);
    `,
  },
};

/** What answers for the version alone, without the rest. */
const FIRST = 'first';

/**
 * Parts that gather many files, for a start that read them one by one, in eighty parts, took half as
 * long again. Each holds what the modules named need, and no part before it holds.
 * @type {readonly { name: string, for: readonly string[], takes: (id: string) => boolean }[]}
 */
const GATHERED = [
  {
    name: 'asked-again',
    for: ['src/commands/run-cli.ts', 'src/lifter/system-ports.ts'],
    takes: () => true,
  },
  { name: 'libraries', for: ['src/commands/main.ts', 'src/commands/today.ts'], takes: isOfLibrary },
  {
    name: 'needed',
    for: ['src/commands/main.ts', 'src/commands/today.ts'],
    takes: () => true,
  },
];

/** Rolldown's groups for {@link GATHERED}, and before them one of what the entry itself imports. */
function gathering() {
  /** @type {Map<string, Set<string>>} */
  const ofPart = new Map();
  /** @type {import('rolldown').Plugin} */
  const plugin = {
    name: 'gathering',
    buildEnd() {
      /**
       * @param {readonly string[]} ids
       * @param {Set<string>} found
       * @returns {Set<string>} these and all that they import
       */
      const withImported = (ids, found = new Set()) => {
        for (const id of ids) {
          if (found.has(id)) continue;
          found.add(id);
          withImported(this.getModuleInfo(id)?.importedIds ?? [], found);
        }
        return found;
      };
      const all = [...this.getModuleIds()];
      const entry = all.find((id) => this.getModuleInfo(id)?.isEntry) ?? '';
      // Not the entry itself: it waits for parts that need these.
      ofPart.set(FIRST, withImported(this.getModuleInfo(entry)?.importedIds ?? []));
      for (const { name, for: names } of GATHERED) {
        const isNamed = (/** @type {string} */ id) =>
          names.some((each) => slashed(id).endsWith(`/${each}`));
        ofPart.set(name, withImported(all.filter(isNamed)));
      }
    },
  };
  const groups = [{ name: FIRST, takes: () => true }, ...GATHERED].map(({ name, takes }, at) => ({
    name,
    priority: GATHERED.length - at,
    test: (/** @type {string} */ id) => ofPart.get(name)?.has(id) === true && takes(id),
  }));
  return { plugin, codeSplitting: { groups } };
}

/** @param {string} id */
function isOfLibrary(id) {
  return slashed(id).includes('/node_modules/');
}

/** @param {string} path */
function slashed(path) {
  return path.replaceAll('\\', '/');
}

/**
 * Bundles one entry and all it imports; dynamic imports become files of their own, so that a
 * command without a screen never reads Ink. Everything lies flat in one folder, so a path relative
 * to `import.meta.url` means the same in each of them.
 * @param {string} entry
 * @param {string} to the entry's file in the built folder
 */
export async function bundle(entry, to) {
  const folder = join(ROOT, dirname(to));
  const { plugin, codeSplitting } = gathering();
  const build = await rolldown({
    cwd: ROOT,
    input: { [basename(to, '.js')]: entry },
    platform: 'node',
    plugins: [withoutUnused, withLater, withQuickWidths, plugin],
    transform: {
      target: 'node20',
      define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    },
    // That main is one of the parts that are loaded when asked for, and of demo's own, is meant so.
    checks: { ineffectiveDynamicImport: false },
  });
  const { output } = await build.generate({
    format: 'esm',
    chunkFileNames: '[name]-[hash].js',
    // Measured: full minifying starts no faster, and whole lines keep error reports readable.
    minify: { compress: true, mangle: false, codegen: { removeWhitespace: false } },
    banner: '#!/usr/bin/env node',
    comments: { legal: false },
    codeSplitting,
  });
  await build.close();
  mkdirSync(folder, { recursive: true });
  const parts = output.filter((each) => each.type === 'chunk');
  for (const part of parts.toSorted((a, b) => Number(a.isEntry) - Number(b.isEntry))) {
    const path = join(folder, part.fileName);
    writeFileSync(`${path}.new`, await withoutSpace(part), { mode: 0o755 });
    renameSync(`${path}.new`, path);
  }
  writeFileSync(join(folder, NOTICES), noticesOf(parts.flatMap(({ moduleIds }) => moduleIds)));
  clearOld(folder, new Set([NOTICES, ...parts.map(({ fileName }) => fileName)]));
}

/** A part is taken for one of libraries where they are at least this share of its files' text. */
const OF_LIBRARIES = 0.9;

/**
 * A part of libraries loses its spaces, which are a quarter of it; the names of its files stay.
 * @param {import('rolldown').OutputChunk} part
 */
async function withoutSpace({ fileName, code, modules }) {
  const lengthOf = (/** @type {string[]} */ ids) =>
    ids.reduce((sum, id) => sum + (modules[id]?.renderedLength ?? 0), 0);
  const ids = Object.keys(modules);
  const libraries = ids.filter(isOfLibrary);
  if (libraries.length === 0 || lengthOf(libraries) < OF_LIBRARIES * lengthOf(ids)) return code;
  const { code: short } = await minify(fileName, code, { compress: false, mangle: false });
  return `${short}\n${ids.map((id) => `// ${relative(ROOT, id)}\n`).join('')}`;
}

/**
 * Name, version, licence and its words for every library that the bundle holds.
 * @param {string[]} inputs paths of the files that were bundled
 */
function noticesOf(inputs) {
  const packages = inputs.flatMap(
    (path) => /.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(slashed(path))?.[0] ?? [],
  );
  return [...new Set(packages)]
    .toSorted()
    .map((folder) => {
      const { name, version, license, author } = JSON.parse(
        readFileSync(join(folder, 'package.json'), 'utf8'),
      );
      const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
      const words = file
        ? readFileSync(join(folder, file), 'utf8').trim()
        : `By ${author?.name ?? author}. The package holds no text of its licence.`;
      return `${name} ${version}, ${license}\n\n${words}\n`;
    })
    .join(`\n${'-'.repeat(72)}\n\n`);
}

/**
 * A session that is running may still have to load a part of the build it was started from, so
 * parts of an earlier build stay for a day.
 * @param {string} folder
 * @param {Set<string>} present
 */
function clearOld(folder, present) {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (!present.has(name) && Date.now() - statSync(path).mtimeMs > DAY_MS) rmSync(path);
  }
}

if (import.meta.filename === process.argv[1]) {
  const packing = process.argv.includes('--pack');
  if (packing) rmSync(join(ROOT, 'dist'), { recursive: true, force: true });
  await bundle('src/cli.ts', 'dist/cli.js');
  if (process.argv.includes('--driven')) {
    await bundle('tests/terminal/driven.ts', 'tests/.built/driven.js');
  }
}
