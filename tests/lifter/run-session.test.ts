import { describe, expect, it } from 'vitest';
import { openWords } from '../../src/lifter/prepare.ts';
import { isStale } from '../../src/lifter/run-session.ts';
import { lift, play, prescription, straight } from '../session/a-session.ts';

const HOUR = 60 * 60;

describe('a session that was left open', () => {
  it('is asked about after twelve hours without anything done in it', () => {
    const session = lift(play(prescription(straight())));
    const staleAfter = (seconds: number) => {
      const { wall, up, boot } = session.state().lastAt;
      return isStale(session.state(), {
        wall: wall + seconds * 1000,
        up: up === null ? null : up + seconds * 1000,
        boot,
      });
    };
    expect(staleAfter(12 * HOUR)).toBe(false);
    expect(staleAfter(12 * HOUR + 1)).toBe(true);
  });

  it('says its day and how far it has come', () => {
    const session = lift(play(prescription(straight())));
    expect(openWords(session.state())).toBe('Day A, begun Wed 25 Nov: 1 of 3 sets done.');
  });
});
