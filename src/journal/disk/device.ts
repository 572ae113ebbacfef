/** This machine and this process, as far as files must be told apart by them. */
export interface Device {
  /** What the lifter calls the machine: the host name. */
  readonly name: string;
  /** The machine's own id, which a restored backup does not bring along; null where there is none. */
  readonly machine: string | null;
  /** Names the machine's present run; null where it is not known. */
  readonly boot: string | null;
  readonly pid: number;
  /** When a process started, in a unit of the platform's own; null where it does not run, '' where it runs and no more is known. */
  readonly startOf: (pid: number) => string | null;
  /** A fresh random name of so many letters and digits. */
  readonly random: (length: number) => string;
}
