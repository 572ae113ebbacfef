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
import { build, transform } from 'esbuild';
import { ROOT } from './root.mjs';

const DAY_MS = 24 * 60 * 60 * 1000;

/** What the licences of the bundled libraries ask to go along with them. */
export const NOTICES = 'NOTICES.txt';

/**
 * What libraries ask for and this program never uses. Ink wants the React developer tools only when
 * told to, and they are not installed; conf checks by a schema, and compares versions, only where it is
 * given schemas and migrations. Zod does the one here and nobody the other, and its validator would be
 * a tenth of the whole build.
 * @type {import('esbuild').Plugin}
 */
const withoutUnused = {
  name: 'without-unused',
  setup({ onResolve, onLoad }) {
    onResolve(
      { filter: /^(react-devtools-core|ajv-formats|ajv\/dist\/2020\.js|semver)$/ },
      ({ path }) => ({
        path,
        namespace: 'empty',
      }),
    );
    onLoad({ filter: /.*/, namespace: 'empty' }, () => ({
      contents: 'export default {}; export class Ajv2020 {}',
    }));
  },
};

/**
 * Ink measures every line of every frame by graphemes, which was a fifth of what a second of a rest
 * cost. Its libraries get the measure of `src/text/columns.ts`, which knows a plain text at a glance
 * and asks the real one for any other.
 * @type {import('esbuild').Plugin}
 */
const withQuickWidths = {
  name: 'with-quick-widths',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^string-width$/ }, ({ path, importer }) =>
      importer.includes('node_modules') ? { path, namespace: 'quick' } : null,
    );
    onLoad({ filter: /.*/, namespace: 'quick' }, () => ({
      resolveDir: ROOT,
      contents: `
        import stringWidth from './node_modules/string-width/index.js';
        import { columnsOf } from './src/text/columns.ts';
        export default (text, options) =>
          options === undefined ? columnsOf(text) : stringWidth(text, options);
      `,
    }));
  },
};

/**
 * Bundles one entry and all it imports; dynamic imports become files of their own, so that a
 * command without a screen never reads Ink. Everything lies flat in one folder, so a path relative
 * to `import.meta.url` means the same in each of them.
 * @param {string} entry
 * @param {string} to the entry's file in the built folder
 */
export async function bundle(entry, to) {
  const folder = join(ROOT, dirname(to));
  const { outputFiles, metafile } = await build({
    absWorkingDir: ROOT,
    entryPoints: { [basename(to, '.js')]: entry },
    outdir: folder,
    write: false,
    metafile: true,
    bundle: true,
    splitting: true,
    chunkNames: '[name]-[hash]',
    format: 'esm',
    platform: 'node',
    target: 'node20',
    jsx: 'automatic',
    // Measured: full minifying starts no faster, and whole lines keep error reports readable.
    minifySyntax: true,
    legalComments: 'none',
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    // Some dependencies are CommonJS inside and ask for Node's own modules by `require`.
    banner: {
      js: [
        '#!/usr/bin/env node',
        `import { createRequire as holdfastRequire } from 'node:module';`,
        'const require = holdfastRequire(import.meta.url);',
      ].join('\n'),
    },
    plugins: [withoutUnused, withQuickWidths],
    logLevel: 'warning',
  });
  mkdirSync(folder, { recursive: true });
  const entryLast = outputFiles.toSorted((a, b) => rank(a.path) - rank(b.path));
  for (const { path, contents } of entryLast) {
    const made = metafile.outputs[relative(ROOT, path)]?.inputs ?? {};
    writeFileSync(`${path}.new`, await withoutSpace(contents, made), { mode: 0o755 });
    renameSync(`${path}.new`, path);
  }
  writeFileSync(join(folder, NOTICES), noticesOf(Object.keys(metafile.inputs)));
  clearOld(folder, new Set([NOTICES, ...outputFiles.map(({ path }) => basename(path))]));

  /** @param {string} path */
  function rank(path) {
    return basename(path) === basename(to) ? 1 : 0;
  }
}

/** A part is taken for one of libraries where they are at least this share of its bytes. */
const OF_LIBRARIES = 0.9;

/**
 * A part of libraries loses its spaces, which are a quarter of it; the names of its files stay.
 * @param {Uint8Array} contents
 * @param {Record<string, { bytesInOutput: number }>} made what each file in it takes, by its path
 */
async function withoutSpace(contents, made) {
  const inputs = Object.keys(made);
  const bytesOf = (/** @type {string[]} */ paths) =>
    paths.reduce((sum, path) => sum + (made[path]?.bytesInOutput ?? 0), 0);
  const libraries = inputs.filter((path) => path.includes('node_modules/'));
  if (inputs.length === 0 || bytesOf(libraries) < OF_LIBRARIES * bytesOf(inputs)) return contents;
  const { code } = await transform(contents, { minifyWhitespace: true, format: 'esm' });
  return `${code}${inputs.map((path) => `// ${path}\n`).join('')}`;
}

/**
 * Name, version, licence and its words for every library that the bundle holds.
 * @param {string[]} inputs paths of the files that were bundled
 */
function noticesOf(inputs) {
  const packages = inputs.flatMap((path) => {
    const [found] = /.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path) ?? [];
    return found ? [found.replace(/^[a-z]+:/, '')] : [];
  });
  return [...new Set(packages)]
    .toSorted()
    .map((folder) => {
      const { name, version, license, author } = JSON.parse(
        readFileSync(join(ROOT, folder, 'package.json'), 'utf8'),
      );
      const file = readdirSync(join(ROOT, folder)).find((each) => /^licen[cs]e/i.test(each));
      const words = file
        ? readFileSync(join(ROOT, folder, file), 'utf8').trim()
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
