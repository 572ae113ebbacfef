import { isAbsolute, join } from 'node:path';

/** Where the lifter's files live. */
export interface Folders {
  /** Journals and programs: what must never be lost. */
  readonly data: string;
  readonly config: string;
  /** Locks and other things of this machine alone. */
  readonly state: string;
  /** What can be worked out again from the data, and may be deleted. */
  readonly cache: string;
  /** The data lie where they do without `--data` and `HOLDFAST_DATA`. */
  readonly isUsual: boolean;
}

export interface FolderSources {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  readonly home: string;
  /** From `--data`; beats everything. */
  readonly dataOption: string | null;
  readonly cwd: string;
}

const NAME = 'holdfast';

/**
 * The folders of this platform: XDG on Linux and the like, Library on macOS, AppData on Windows.
 * `--data` and then `HOLDFAST_DATA` move the data; relative XDG paths are ignored, as its
 * specification says.
 */
export function foldersFor(sources: FolderSources): Folders {
  const usual = usualFolders(sources);
  const wanted = sources.dataOption ?? sources.env.HOLDFAST_DATA;
  if (!wanted) return usual;
  const data = isAbsolute(wanted) ? wanted : join(sources.cwd, wanted);
  return { ...usual, data, isUsual: data === usual.data };
}

function usualFolders(sources: FolderSources): Folders {
  return { ...foldersOf(sources), isUsual: true };
}

function foldersOf({ env, platform, home }: FolderSources): Omit<Folders, 'isUsual'> {
  if (platform === 'darwin') {
    const support = join(home, 'Library', 'Application Support', NAME);
    return {
      data: support,
      config: join(home, 'Library', 'Preferences', NAME),
      state: join(support, 'state'),
      cache: join(home, 'Library', 'Caches', NAME),
    };
  }
  if (platform === 'win32') {
    const local = env.LOCALAPPDATA || join(home, 'AppData', 'Local');
    const roaming = env.APPDATA || join(home, 'AppData', 'Roaming');
    return {
      data: join(local, NAME, 'Data'),
      config: join(roaming, NAME, 'Config'),
      state: join(local, NAME, 'State'),
      cache: join(local, NAME, 'Cache'),
    };
  }
  const base = (name: string, ...otherwise: string[]) => {
    const given = env[name];
    return join(given && isAbsolute(given) ? given : join(home, ...otherwise), NAME);
  };
  return {
    data: base('XDG_DATA_HOME', '.local', 'share'),
    config: base('XDG_CONFIG_HOME', '.config'),
    state: base('XDG_STATE_HOME', '.local', 'state'),
    cache: base('XDG_CACHE_HOME', '.cache'),
  };
}
