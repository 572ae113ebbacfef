import { describe, expect, test } from 'vitest';
import type { SessionCommand } from '../../src/session/command.ts';
import { DECISIONS } from '../../src/session/decide.ts';
import { kilograms } from '../../src/training/mass.ts';
import {
  cluster,
  counts,
  lift,
  meaning,
  type Play,
  play,
  prescription,
  setId,
  straight,
} from './a-session.ts';

const warm = straight({ warmUp: [{ load: kilograms(40), reps: 5 }] });
const lighter = straight({ load: kilograms(75) });
const other = straight({ track: 'pull straight 5-8', lift: 'pull' });

/** Every act, and a session in which it can be done. */
const acts: readonly (readonly [SessionCommand['do'], Play, SessionCommand?])[] = [
  ['start', play(prescription(straight()))],
  ['put-down', play(prescription(straight())).send('start')],
  ['withdraw-start', play(prescription(straight())).send('start')],
  [
    'amend',
    lift(play(prescription(straight()))),
    { do: 'amend', of: 'file:2', numbers: { count: 4 } },
  ],
  ['confirm', lift(play(prescription(straight())))],
  ['skip-set', play(prescription(straight()))],
  ['skip-set', play(prescription(warm))],
  ['skip-exercise', play(prescription(straight())), { do: 'skip-exercise', exercise: 0 }],
  ['choose-exercise', play(prescription(warm, cluster())), { do: 'choose-exercise', exercise: 1 }],
  ['pair', lift(play(prescription(straight(), cluster()))), { do: 'pair', exercise: 1 }],
  [
    'part-pair',
    lift(play(prescription(straight({ pair: 'a' }), cluster({ pair: 'a' })))),
    { do: 'part-pair', exercise: 0 },
  ],
  ['add-set', play(prescription(straight()))],
  ['end-cluster', lift(play(prescription(cluster())))],
  [
    'replace',
    lift(play(prescription(straight()))),
    { do: 'replace', exercise: 0, by: lighter, because: 'other-load' },
  ],
  [
    'replace',
    lift(play(prescription(straight()))),
    { do: 'replace', exercise: 0, by: other, because: 'other-lift' },
  ],
  [
    'shorten',
    lift(play(prescription(straight()))),
    {
      do: 'shorten',
      minutes: 10,
      exercises: [{ exercise: 0, sets: 1, rest: { from: 180, to: 180 } }],
      restBetween: { from: 60, to: 60 },
      cut: [],
    },
  ],
  ['change-rest', lift(play(prescription(straight()))), { do: 'change-rest', by: 30 }],
  ['pause', lift(play(prescription(straight())))],
  [
    'resume',
    lift(play(prescription(straight())))
      .send('pause')
      .wait(30),
  ],
  ['mark-pain', lift(play(prescription(straight()))), { do: 'mark-pain', exercise: 0 }],
  ['note', play(prescription(straight())), { do: 'note', exercise: 0, text: 'grip slipped' }],
  ['close', lift(play(prescription(straight()))), { do: 'close', how: 'as-it-is' }],
  ['discard', lift(play(prescription(straight())))],
];

describe('every act is taken back whole, and brought back whole', () => {
  test.each(acts.map(([name, session, command]) => ({ name, session, command })))(
    '$name',
    (each) => {
      const { name, session, command } = each;
      const before = meaning(session.state());
      session.send(command ?? name);
      const after = meaning(session.state());
      expect(after).not.toEqual(before);
      expect(meaning(session.send('undo').state())).toEqual(before);
      expect(meaning(session.send('redo').state())).toEqual(after);
    },
  );

  test('no act is missing from the list', () => {
    const tried = new Set<string>([...acts.map(([name]) => name), 'undo', 'redo']);
    expect(Object.keys(DECISIONS).filter((name) => !tried.has(name))).toEqual([]);
  });
});

test('undo goes back act by act, and redo forward again', () => {
  const session = lift(lift(play(prescription(straight()))));
  const states = [meaning(session.state())];
  for (let back = 0; back < 4; back += 1) states.push(meaning(session.send('undo').state()));
  expect(session.refusal('undo')).toBe('There is nothing to undo.');
  for (const state of states.slice(0, -1).toReversed()) {
    expect(meaning(session.send('redo').state())).toEqual(state);
  }
  expect(session.refusal('redo')).toBe('There is no undo to take back.');
});

test('after another act there is no undo to take back', () => {
  const session = lift(play(prescription(straight())))
    .send('undo')
    .send('put-down');
  expect(session.refusal('redo')).toBe('There is no undo to take back.');
  expect(counts(session, 0)).toEqual([6]);
});

test('a set that was typed, undone and done again is one set', () => {
  const session = lift(play(prescription(straight())));
  session.send({ do: 'amend', of: setId(session, 0, 0), numbers: { count: 8 } });
  session.send('undo').send('undo').send('put-down');
  expect(session.state().exercises[0]?.done).toMatchObject([{ count: 6, entered: 'as-planned' }]);
});
