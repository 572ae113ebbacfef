import { describe, expect, it } from 'vitest';
import type { Cue, CueChoices } from '../../src/terminal/cue.ts';
import { cuePlayer, noticeCode } from '../../src/terminal/cue-player.ts';
import { speechProgram } from '../../src/terminal/speech.ts';
import type { NoticeStyle } from '../../src/terminal/terminal-kind.ts';

const ALL: CueChoices = {
  bell: true,
  flash: true,
  speech: true,
  notification: true,
  spoken: 'full',
} as const;
const NONE: CueChoices = {
  bell: false,
  flash: false,
  speech: false,
  notification: false,
  spoken: 'full',
} as const;

/** Plays cues and lets the time between them go by. */
const played = (choices: CueChoices, ...cues: readonly (Cue | number)[]) =>
  playedWith('osc-777', choices, ...cues);

function playedWith(notice: NoticeStyle, choices: CueChoices, ...cues: readonly (Cue | number)[]) {
  let now = 0;
  let waiting: { at: number; act: () => void }[] = [];
  const written: string[] = [];
  const spoken: string[][] = [];
  const pass = (ms: number) => {
    now += ms;
    const due = waiting.filter(({ at }) => at <= now);
    waiting = waiting.filter(({ at }) => at > now);
    for (const { act } of due) act();
  };
  const player = cuePlayer(
    {
      write: (bytes) => written.push(bytes),
      spawn: (command, args) => spoken.push([command, ...args]),
      after: (ms, act) => {
        const one = { at: now + ms, act };
        waiting.push(one);
        return () => {
          waiting = waiting.filter((other) => other !== one);
        };
      },
      now: () => now,
    },
    speechProgram('linux', (command) => command === 'espeak-ng'),
    notice,
  );
  for (const cue of cues) {
    if (typeof cue === 'number') pass(cue);
    else player.play(cue, choices);
  }
  player.stop();
  pass(10_000);
  return { bytes: written.join(''), spoken };
}

const bells = (bytes: string) =>
  (bytes.replace(/\u001b\][^\u0007]*\u0007/g, '').match(/\u0007/g) ?? []).length;

describe('a cue', () => {
  it('is silent where nothing was chosen', () => {
    expect(played(NONE, { cue: 'rest-late' }, 1_000)).toEqual({ bytes: '', spoken: [] });
  });

  it.each<[Cue, number, string | null]>([
    [{ cue: 'rest-early' }, 1, 'Ready'],
    [{ cue: 'rest-late' }, 2, 'Lift'],
    [{ cue: 'tick', left: 3 }, 1, 'three'],
    [{ cue: 'go' }, 2, 'Go'],
    [{ cue: 'last-one' }, 0, 'Last one'],
    [{ cue: 'cluster-done' }, 1, 'Done'],
    [{ cue: 'hold-reached' }, 1, 'Done'],
    [{ cue: 'other-side' }, 1, 'Other side'],
    [{ cue: 'session-done' }, 0, 'Session done'],
    [{ cue: 'rest-soon', seconds: 60 }, 0, 'One minute left'],
    [
      {
        cue: 'next',
        lift: 'Back squat',
        load: 72.5,
        unit: 'kg',
        aim: '6 reps',
        plates: 'take off 5, put on 10 a side',
      },
      0,
      'Back squat. Seventy-two and a half kilograms, 6 reps. Take off 5, put on 10 a side.',
    ],
    [
      { cue: 'next', lift: null, load: null, unit: 'lb', aim: '8 reps', plates: null },
      0,
      'Body weight, 8 reps.',
    ],
  ])('%o rings and speaks', (cue, strokes, words) => {
    const { bytes, spoken } = played(ALL, cue, 1_000);
    expect(bells(bytes)).toBe(strokes);
    expect(spoken).toEqual(words === null ? [] : [['espeak-ng', '--', words]]);
  });

  it('flashes where something begins or ends, and not where it only tells or counts', () => {
    const flashes = (cue: Cue) =>
      played({ ...NONE, flash: true }, cue, 1_000).bytes === '\u001b[?5h\u001b[?5l';
    const begins = [
      'rest-early',
      'rest-late',
      'go',
      'cluster-done',
      'hold-reached',
      'other-side',
    ] as const;
    expect(begins.filter((cue) => !flashes({ cue }))).toEqual([]);
    const next = {
      cue: 'next',
      lift: 'Row',
      load: 60,
      unit: 'kg',
      aim: '8',
      plates: null,
    } as const;
    const tells: readonly Cue[] = [
      { cue: 'tick', left: 1 },
      { cue: 'last-one' },
      { cue: 'rest-soon', seconds: 10 },
      next,
      { cue: 'session-done' },
    ];
    expect(tells.filter(flashes)).toEqual([]);
  });

  it('is told in few words where the lifter wants few', () => {
    const next = { cue: 'next', lift: 'Row', load: 60, unit: 'lb', aim: '8 reps' } as const;
    const few = { ...ALL, spoken: 'few' } as const;
    const { spoken } = played(few, { ...next, plates: 'put on 10 a side' });
    expect(spoken.flat()).toContain('Row, sixty pounds');
  });

  it('flashes and takes the flash away again', () => {
    const { bytes } = played({ ...NONE, flash: true }, { cue: 'rest-early' }, 500);
    expect(bytes).toBe('\u001b[?5h\u001b[?5l');
  });

  it('never flashes more than three times a second (WCAG 2.3.1)', () => {
    const many = Array.from({ length: 50 }, () => [{ cue: 'go' } as const, 20]).flat();
    const { bytes } = played({ ...NONE, flash: true }, ...many);
    // Fifty cues in one second.
    expect(bytes.match(/\?5h/g)?.length).toBeLessThanOrEqual(3);
  });

  it('flashes anew as soon as a third of a second has passed', () => {
    const flashes = (ms: number) =>
      played({ ...NONE, flash: true }, { cue: 'go' }, ms, { cue: 'go' }).bytes.match(/\?5h/g)
        ?.length;
    expect([flashes(339), flashes(340)]).toEqual([1, 2]);
  });

  it('rings its second stroke a fifth of a second after the first, to be heard as two', () => {
    const strokes = (ms: number) =>
      bells(played({ ...NONE, bell: true }, { cue: 'rest-late' }, ms).bytes);
    expect([strokes(150), strokes(300)]).toEqual([1, 2]);
  });

  it('flashes for a tenth of a second', () => {
    const flash = (ms: number) => played({ ...NONE, flash: true }, { cue: 'go' }, ms).bytes;
    expect([flash(90), flash(180)]).toEqual(['\u001b[?5h', '\u001b[?5h\u001b[?5l']);
  });

  it('that is called off on the way out writes nothing more', () => {
    expect(played({ ...NONE, bell: true }, { cue: 'rest-late' }).bytes).toBe('\u0007');
  });
});

describe('a notification', () => {
  it.each([
    ['osc-9', '\u001b]9;Ready.\u0007'],
    ['osc-777', '\u001b]777;notify;holdfast;Ready.\u0007'],
    ['osc-99', '\u001b]99;;Ready.\u001b\\'],
    ['bell', '\u0007'],
  ] as const)('by %s', (style, wanted) => expect(noticeCode('Ready.', style)).toBe(wanted));

  it('that is only a bell does not ring beside the bell, and rings without it', () => {
    const late = { cue: 'rest-early' } as const;
    const both = playedWith('bell', { ...NONE, bell: true, notification: true }, late, 1_000);
    expect(bells(both.bytes)).toBe(1);
    expect(playedWith('bell', { ...NONE, notification: true }, late, 1_000).bytes).toBe('\u0007');
  });

  it('of words comes beside the bell', () => {
    const { bytes } = played({ ...NONE, bell: true, notification: true }, { cue: 'rest-early' });
    expect(bytes).toMatch(/^\u0007\u001b]777;notify;holdfast;.+\u0007$/);
  });
});
