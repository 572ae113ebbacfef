import { expect, test } from 'vitest';
import { foldersFor } from '../../src/settings/folders.ts';

const at = (
  platform: string,
  env: Readonly<Record<string, string>> = {},
  dataOption: string | null = null,
) => foldersFor({ env, platform, home: '/home/me', dataOption, cwd: '/here' });
const slashes = (path: string) => path.replaceAll('\\', '/');

// XDG Base Directory Specification 0.8; Apple, File System Programming Guide; Microsoft, Known Folders (memory).
test.each([
  [
    'linux',
    {},
    '/home/me/.local/share',
    '/home/me/.config',
    '/home/me/.local/state',
    '/home/me/.cache',
  ],
  [
    'freebsd',
    { XDG_DATA_HOME: '/d', XDG_CONFIG_HOME: '/c', XDG_STATE_HOME: '/s', XDG_CACHE_HOME: '/k' },
    '/d',
    '/c',
    '/s',
    '/k',
  ],
  // Relative paths are ignored, as the specification says.
  [
    'linux',
    { XDG_DATA_HOME: 'd', XDG_CACHE_HOME: '' },
    '/home/me/.local/share',
    '/home/me/.config',
    '/home/me/.local/state',
    '/home/me/.cache',
  ],
] as const)('%s with %j', (platform, env, data, config, state, cache) => {
  const found = at(platform, env);
  expect([found.data, found.config, found.state, found.cache].map(slashes)).toEqual(
    [data, config, state, cache].map((folder) => `${folder}/holdfast`),
  );
  expect(found.isUsual).toBe(true);
});

test('macOS has a Library, Windows its AppData, named or usual', () => {
  const mac = at('darwin');
  expect(mac).toMatchObject({
    data: '/home/me/Library/Application Support/holdfast',
    config: '/home/me/Library/Preferences/holdfast',
    state: '/home/me/Library/Application Support/holdfast/state',
    cache: '/home/me/Library/Caches/holdfast',
  });
  const parts = (env: Readonly<Record<string, string>>) => {
    const { data, config, state, cache } = at('win32', env);
    return [data, config, state, cache].map(slashes);
  };
  const usual = '/home/me/AppData';
  expect(parts({})).toEqual([
    `${usual}/Local/holdfast/Data`,
    `${usual}/Roaming/holdfast/Config`,
    `${usual}/Local/holdfast/State`,
    `${usual}/Local/holdfast/Cache`,
  ]);
  expect(parts({ LOCALAPPDATA: '/l', APPDATA: '/r' })).toEqual([
    '/l/holdfast/Data',
    '/r/holdfast/Config',
    '/l/holdfast/State',
    '/l/holdfast/Cache',
  ]);
});

test('the data lie where they are asked for: by the option before the environment, from here on', () => {
  const usual = at('linux').data;
  expect(at('linux', { HOLDFAST_DATA: '/a' })).toMatchObject({ data: '/a', isUsual: false });
  expect(at('linux', { HOLDFAST_DATA: '/a' }, 'b')).toMatchObject({
    data: '/here/b',
    isUsual: false,
  });
  expect(at('linux', { HOLDFAST_DATA: usual })).toMatchObject({ data: usual, isUsual: true });
  expect(at('linux', { HOLDFAST_DATA: '' }).data).toBe(usual);
  // What else is kept stays where it is.
  expect(at('linux', { HOLDFAST_DATA: '/a' }).config).toBe('/home/me/.config/holdfast');
});
