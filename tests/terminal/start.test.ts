import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../src/tooling/root.mjs';
import { age } from '../bench/long-history.ts';

const CLI = join(ROOT, 'dist', 'cli.js');
const home = mkdtempSync(join(tmpdir(), 'holdfast-start-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** Says on a fourth stream which modules were asked for. */
const TELL_MODULES = `data:text/javascript,${encodeURIComponent(
  `import module from 'node:module';
   import { writeSync } from 'node:fs';
   const loaded = new Set();
   module.registerHooks({ load: (url, context, next) => {
     loaded.add(url);
     return next(url, context);
   } });
   process.on('exit', () => writeSync(3, [...loaded].join(' ')));`,
)}`;

function run(node: readonly string[], ...args: string[]) {
  const { status, stderr, stdout, output } = spawnSync(process.execPath, [...node, CLI, ...args], {
    env: { PATH: process.env.PATH, HOME: home },
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
  });
  return { status, stderr, stdout, told: String(output[3] ?? '') };
}

/** Parts of the build that a command loads. */
function loadedBy(...args: string[]): readonly string[] {
  const { status, told } = run(['--import', TELL_MODULES], ...args);
  expect(status).toBe(0);
  const folder = pathToFileURL(join(ROOT, 'dist/')).href;
  return told.split(' ').filter((url) => url.startsWith(folder));
}

const textOf = (parts: readonly string[]): string =>
  parts.map((url) => readFileSync(new URL(url), 'utf8')).join('\n');

describe('what is loaded', () => {
  test.each([['today', '--json'], ['--version'], ['load', '100'], ['history']])(
    'by %s holds neither what draws screens nor what writes settings',
    (...args) => {
      const text = textOf(loadedBy(...args));
      expect(text.length).toBeGreaterThan(1_000);
      // The bundler names each file that it puts in.
      expect(text).not.toMatch(
        /^\/\/ node_modules\/(ink|react|react-reconciler|yoga-layout|conf|preact)\//m,
      );
    },
  );

  test('by today is no more than it was', () => {
    // Seen: 9 parts. In eighty of them a start took half as long again.
    expect(loadedBy('today', '--json').length).toBeLessThanOrEqual(10);
  });

  test('by today, asked again, is not what works it out', () => {
    const config = join(home, '.config', 'holdfast');
    const program = join(home, 'three-day.yaml');
    mkdirSync(config, { recursive: true });
    copyFileSync(join(ROOT, 'programs', 'three-day.yaml'), program);
    writeFileSync(join(config, 'settings.json'), JSON.stringify({ program }));
    // The first start gives this device its id.
    run([], 'today', '--json');
    age(home);
    const [first, again] = [0, 1].map(() => loadedBy('today', '--json'));
    expect(JSON.parse(run([], 'today', '--json').stdout).program).toBe('Three days');
    const text = textOf(again ?? []);
    expect(text).not.toMatch(/^\/\/ src\/(progression|strength|program|journal\/fold.*)\//m);
    expect(text).not.toMatch(/^\/\/ node_modules\//m);
    // Its name tells one build from another, for it holds the names of the parts that it leads to.
    const named = (name: string) => first?.find((url) => url.includes(`/${name}-`)) ?? name;
    expect(textOf([named('asked-again')])).toContain(basename(named('main')));
    expect(textOf([named('main')])).toContain(basename(named('needed')));
  });

  test('by --version reads no program', () => {
    expect(textOf(loadedBy('--version'))).not.toMatch(/^\/\/ node_modules\/(yaml|zod)\//m);
  });
});

test.each([['today'], ['check'], ['gear', '--plates', '20kg=4'], ['settings', 'bell', 'no']])(
  '%s makes no code out of text',
  (...args) => {
    const { status, stderr } = run(['--disallow-code-generation-from-strings'], ...args);
    expect(stderr).not.toContain('EvalError');
    expect(status).toBe(0);
  },
);
