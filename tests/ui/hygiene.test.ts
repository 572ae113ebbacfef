import { describe, expect, it } from 'vitest';
import { blockDigits } from '../../src/ui/digits.ts';
import { Glass } from './glass.ts';

const CLEAN = { buffer: 'normal', mouse: 'none', paste: false, cursorHidden: false, raw: false };

describe('the terminal is as it was before', () => {
  it.each([
    ['q', 'q', 0],
    ['escape', '\u001b', 0],
    ['ctrl-c', '\u0003', 130],
  ])('after %s', async (_, keys, status) => {
    const glass = new Glass({ settings: { taps: true } });
    await glass.until('BEGIN');
    expect(glass.modes().mouse).toBe('vt200');
    glass.type(keys);
    glass.scene.clock.pass(100);
    expect(await glass.end).toBe(status);
    await glass.screen();
    expect(glass.modes()).toEqual(CLEAN);
  });

  it.each([
    ['SIGTERM', 143],
    ['SIGINT', 130],
  ])('after %s', async (signal, status) => {
    const glass = new Glass({ settings: { taps: true } });
    await glass.until('BEGIN');
    glass.signals.emit(signal);
    expect(await glass.end).toBe(status);
    await glass.screen();
    expect(glass.modes()).toEqual(CLEAN);
  });

  it('after an error that nobody caught, which comes back to the caller', async () => {
    const glass = new Glass({ settings: { taps: true } });
    await glass.until('BEGIN');
    const end = expect(glass.end).rejects.toThrow('a bug');
    glass.signals.emit('uncaughtException', new Error('a bug'));
    await end;
    await glass.screen();
    expect(glass.modes()).toEqual(CLEAN);
  });

  it('after a bug while drawing, which comes back to the caller', async () => {
    const glass = new Glass({ settings: { taps: true } });
    await glass.until('BEGIN');
    Object.assign(glass.scene.coach, {
      reasonWords: () => {
        throw new Error('a bug');
      },
    });
    const end = expect(glass.end).rejects.toThrow('a bug');
    glass.type('w');
    await end;
    await glass.screen();
    expect(glass.modes()).toEqual(CLEAN);
  });

  it('when the process ends without a word', async () => {
    const glass = new Glass({ settings: { taps: true } });
    await glass.until('BEGIN');
    glass.signals.emit('exit', 1);
    await glass.screen();
    expect(glass.modes()).toMatchObject({ buffer: 'normal', mouse: 'none', cursorHidden: false });
    glass.type('q');
    await glass.end;
  });

  it('after a hang-up nothing more is written', async () => {
    const glass = new Glass();
    await glass.until('space begin');
    const before = glass.raw.length;
    glass.signals.emit('SIGHUP');
    expect(await glass.end).toBe(129);
    expect(glass.raw.length).toBe(before);
  });

  it('no listener is left behind but those of signals, which a library may raise again', async () => {
    const glass = new Glass();
    await glass.until('space begin');
    glass.type('q');
    await glass.end;
    expect(glass.signals.eventNames()).toEqual(['SIGINT', 'SIGTERM', 'SIGHUP']);
    expect(glass.keyboard.eventNames()).toEqual(['error']);
  });
});

/** `ESC ]2;` and so on: a title of a rest, with something to spare. */
const MOST_TITLE = 20;

/** The block digits on a screen, without what stands around them. */
const blocks = (screen: string) =>
  screen
    .split('\n')
    .filter((row) => /[█▀▄]/.test(row) && !/[├┤]/.test(row))
    .map((row) => row.slice(2));

describe('what a rest writes at 80 × 24', () => {
  async function resting() {
    const glass = new Glass({ settings: { bell: false, flash: false, speech: false } });
    await glass.until('space begin');
    glass.type(' s ');
    await glass.until(/LIFT.*set 1 of 3/);
    glass.type(' ');
    await glass.until('+2:00 at most');
    return glass;
  }

  it('is at most 250 bytes a second on average and never over 600', async () => {
    const glass = await resting();
    const sizes: number[] = [];
    for (let second = 1; second <= 64; second++) {
      const before = glass.raw.length;
      glass.scene.clock.pass(1_000);
      // A title may come before the frame; the frame ends the second.
      await glass.written(before + MOST_TITLE);
      sizes.push(Buffer.byteLength(glass.raw.slice(before)));
    }
    const mean = sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
    expect(mean).toBeLessThanOrEqual(250);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(600);
    glass.type('q');
    await glass.end;
  });

  it('is nothing when nothing changes', async () => {
    const glass = await resting();
    glass.type('p');
    await glass.until('PAUSED');
    const before = glass.raw;
    glass.scene.clock.pass(3 * 60_000);
    await glass.screen();
    expect(glass.raw).toBe(before);
    glass.type('q');
    await glass.end;
  });

  it('is right on the next frame after the process was stopped for a minute', async () => {
    const glass = await resting();
    glass.scene.clock.jump(150_000);
    glass.scene.clock.pass(1_000);
    expect(blocks(await glass.until('6 sets left · 3 min in'))).toEqual(blockDigits('0:29', 76, 7));
    glass.type('q');
    await glass.end;
  });
});
