/**
 * The program with a clock and a disk that obey a test. Built beside the real one and never
 * packed. Orders come as JSON lines over the socket named by HOLDFAST_DRIVEN; each is answered
 * with one line once it has been carried out.
 */
import { createConnection } from 'node:net';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { runCli } from '../../src/commands/run-cli.ts';
import { systemPorts } from '../../src/lifter/system-ports.ts';
import { DrivenClock } from './driven-clock.ts';
import { drivenFiles } from './driven-files.ts';
import type { Order } from './order.ts';

const {
  HOLDFAST_DRIVEN: socketPath,
  HOLDFAST_DRIVEN_WALL: wall,
  HOLDFAST_DRIVEN_ZONE: zone = '0',
  HOLDFAST_DRIVEN_BOOT: boot = 'boot-1',
  HOLDFAST_DRIVEN_NAME: machineName = 'machine',
} = process.env;
if (!socketPath) throw new Error('HOLDFAST_DRIVEN names the socket that orders come from.');

const clock = new DrivenClock(Number(wall), Number(zone), boot);
const shippedPrograms = fileURLToPath(new URL('../../programs/', import.meta.url));
const real = systemPorts(shippedPrograms);
const disk = drivenFiles(real.files);

const carryOut: { readonly [K in Order['do']]: (order: Extract<Order, { do: K }>) => void } = {
  pass: ({ ms }) => clock.pass(ms),
  sleep: ({ ms }) => clock.sleep(ms),
  'set-wall': ({ by }) => clock.setWallBy(by),
  'set-zone': ({ minutes }) => clock.setZone(minutes),
  fail: ({ code, after }) => disk.failAfter(after, code),
  mend: () => disk.mend(),
  crash: () =>
    void setTimeout(() => {
      throw new Error('a bug, as the test ordered');
    }),
};

const socket = createConnection(socketPath);
// The test's socket must not keep a program alive that has ended.
socket.unref();
createInterface({ input: socket }).on('line', (line) => {
  const order = JSON.parse(line) as Order;
  (carryOut[order.do] as (order: Order) => void)(order);
  // Give the screen its turn before the test looks at it.
  setImmediate(() => socket.write('done\n'));
});

await runCli({ ...real, clock, files: disk.files, machineName }, process.argv.slice(2));
