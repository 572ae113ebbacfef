import { EventEmitter } from 'node:events';

const [columns = '80', rows = '24', every = '50', ticks = '150'] = process.argv.slice(2);

/** Size of the window; with it the milliseconds between ticks and their number come as arguments. */
export const size = { columns: Number(columns), rows: Number(rows) };

/** Ticks before the ones that count, in which the machine warms up. */
const FIRST = 10;
/** All ticks, the first ones too. */
export const TICKS = Number(ticks) + FIRST;

/** A terminal that swallows what is written. */
class Sink extends EventEmitter {
  readonly isTTY = true;
  readonly columns = size.columns;
  readonly rows = size.rows;
  write(_: string, done?: () => void): boolean {
    done?.();
    return true;
  }
}

export const sink = new Sink() as unknown as NodeJS.WriteStream;

/** Ticks, and prints the processor time from each to the next, in microseconds, as JSON; then ends. */
export function printTickTimes(tick: () => void): void {
  const used: number[] = [];
  let before = process.cpuUsage();
  const timer = setInterval(() => {
    const { user, system } = process.cpuUsage(before);
    before = process.cpuUsage();
    used.push(user + system);
    if (used.length <= TICKS) return tick();
    clearInterval(timer);
    process.stdout.write(`${JSON.stringify(used.slice(-Number(ticks)))}\n`, () => process.exit(0));
  }, Number(every));
}
