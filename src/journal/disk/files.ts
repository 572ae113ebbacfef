/** What a folder holds. */
export interface FolderEntry {
  readonly name: string;
  readonly isFolder: boolean;
}

export interface AboutFile {
  /** In bytes. */
  readonly size: number;
  /** When it was last written to, in epoch milliseconds. */
  readonly modified: number;
}

/**
 * The disk, as far as the journal uses it, so that tests can make any call fail. Every function
 * throws what the system says, with its `code`; nothing is retried or hidden here.
 */
export interface Files {
  /** Entries of a folder; none where there is no such folder. */
  readonly list: (folder: string) => readonly FolderEntry[];
  /** The bytes of a file; null where there is none. */
  readonly read: (path: string) => Uint8Array | null;
  /** What the system knows of a file without reading it; null where there is none. */
  readonly about: (path: string) => AboutFile | null;
  /** Makes a folder and those above it, for this user alone; gives the topmost one made, or null. */
  readonly makeFolder: (path: string) => string | null;
  /** Makes a new file for this user alone and opens it; fails with EEXIST where there is one. */
  readonly create: (path: string) => number;
  /** Opens a file that exists, to read and write. */
  readonly open: (path: string) => number;
  /** Writes at a position; gives how many bytes went, which may be fewer than given. */
  readonly write: (file: number, bytes: Uint8Array, position: number) => number;
  readonly truncate: (file: number, size: number) => void;
  /** Returns once the file's content is on the disk itself. */
  readonly sync: (file: number) => void;
  readonly close: (file: number) => void;
  /** Returns once a folder's entries are on the disk itself, where the platform can tell. */
  readonly syncFolder: (path: string) => void;
  readonly remove: (path: string) => void;
  readonly rename: (from: string, to: string) => void;
  /** Gives a file a second name; fails with EEXIST where that is taken. */
  readonly link: (from: string, to: string) => void;
  /** The path without links, also of what is not there yet. */
  readonly realPath: (path: string) => string;
}
