import { createServer, type Socket } from 'node:net';
import { createInterface } from 'node:readline';
import type { Order } from './order.ts';

/** Gives orders to a driven program; each resolves once it has been carried out. */
export interface Driver {
  readonly path: string;
  readonly connected: Promise<void>;
  readonly order: (order: Order) => Promise<void>;
  readonly close: () => void;
}

/** Listens on a socket at `path` for the driven program that is about to start. */
export async function openDriver(path: string): Promise<Driver> {
  let socket: Socket | null = null;
  const waiting: (() => void)[] = [];
  let isConnected = () => {};
  const connected = new Promise<void>((resolve) => {
    isConnected = resolve;
  });
  const server = createServer((client) => {
    socket = client;
    client.on('error', () => {});
    createInterface({ input: client }).on('line', () => waiting.shift()?.());
    isConnected();
  });
  await new Promise<void>((resolve) => server.listen(path, resolve));
  return {
    path,
    connected,
    order: (order) =>
      new Promise((resolve) => {
        waiting.push(resolve);
        socket?.write(`${JSON.stringify(order)}\n`);
      }),
    close: () => {
      socket?.destroy();
      server.close();
    },
  };
}
