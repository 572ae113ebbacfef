import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';

export interface FirstFrame {
  /** Milliseconds of processor time until it was written. */
  readonly cpu: number;
  /** Memory held then, in megabytes. */
  readonly memory: number;
}

/** Says in a file what the process had used when it wrote the frame. */
const TELL_FRAME = `data:text/javascript,${encodeURIComponent(
  `import { renameSync, writeFileSync } from 'node:fs';
   const { write } = process.stdout;
   let isTold = false;
   process.stdout.write = function (chunk, ...rest) {
     const went = write.call(this, chunk, ...rest);
     if (isTold || !String(chunk).includes('begin')) return went;
     isTold = true;
     const { user, system } = process.cpuUsage();
     const memory = process.memoryUsage.rss() / 2 ** 20;
     const told = process.env.HOLDFAST_BENCH_TOLD;
     writeFileSync(told + '.new', JSON.stringify({ cpu: (user + system) / 1000, memory }));
     renameSync(told + '.new', told);
     return went;
   };`,
)}`;

/** Starts an app whose first frame says "begin" in a terminal of 80 columns and leaves it by q. */
export async function firstFrame(app: string, home: string): Promise<FirstFrame> {
  const told = join(home, 'told');
  rmSync(told, { force: true });
  const terminal = spawn(process.execPath, ['--import', TELL_FRAME, app], {
    cols: 80,
    rows: 24,
    cwd: home,
    env: {
      PATH: process.env.PATH,
      HOME: home,
      HOLDFAST_DATA: join(home, 'data'),
      XDG_CONFIG_HOME: join(home, 'config'),
      XDG_STATE_HOME: join(home, 'state'),
      HOLDFAST_BENCH_TOLD: told,
      NODE_ENV: 'production',
      TERM: 'xterm-256color',
      LANG: 'C.UTF-8',
    },
  });
  let isLeft = false;
  terminal.onData(() => {
    if (isLeft || !existsSync(told)) return;
    isLeft = true;
    terminal.write('q');
  });
  await new Promise<void>((resolve) => terminal.onExit(() => resolve()));
  return JSON.parse(readFileSync(told, 'utf8')) as FirstFrame;
}
