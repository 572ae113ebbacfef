import { EventEmitter } from 'node:events';
import type { KeyStream } from '../../src/terminal/key-source.ts';
import { runApp } from '../../src/ui/run-app.tsx';
import { scene } from '../ui/scene.ts';
import { printTickTimes, sink } from './tick-times.ts';

/** The program itself in a rest of straight sets. */
class Keyboard extends EventEmitter implements KeyStream {
  setRawMode() {}
  setEncoding() {}
  resume() {}
  pause() {}
}

const { coach, clock } = scene();
const keyboard = new Keyboard();
runApp({ kind: 'preview', today: coach.today(), chosen: 0 }, coach, {
  stdin: keyboard,
  stdout: sink,
  clock,
  env: {},
  platform: 'linux',
  spawn: () => {},
  hasProgram: () => false,
  signals: new EventEmitter(),
  screenReader: false,
});
keyboard.emit('data', ' s  ');
printTickTimes(() => clock.pass(1_000));
