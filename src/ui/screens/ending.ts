import { openWords } from '../../lifter/prepare.ts';
import type { SessionCommand } from '../../session/command.ts';
import { howMany } from '../../text/words.ts';
import { asPlannedTexts, confirming } from '../as-planned.ts';
import { setsPutDown } from '../entry.ts';
import { type Choice, type ChoiceList, listScreen } from '../list.ts';
import { RUNNER, type Seen } from '../outcome.ts';
import { BACK, LEAVE_BY_TAP, TO_RUNNER } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Finish = Extract<Screen, { kind: 'finish' }>;
type Discard = Extract<Screen, { kind: 'discard' }>;
type Stale = Extract<Screen, { kind: 'stale' }>;

const SUMMARY: Screen = { kind: 'summary', scroll: 0 };

function finishList({ model: { session } }: Seen<Finish>): ChoiceList {
  const planned = session ? asPlannedTexts(session) : [];
  const words = planned.length > 0 ? [`Saved as planned: ${planned.join('; ')}.`] : [];
  const commands: SessionCommand[] = [...confirming(session), { do: 'close', how: 'as-it-is' }];
  const close: Choice = {
    label: planned.length > 0 ? 'Close it, these numbers are right' : 'Close it as it is',
    detail: 'an unfinished exercise neither moves up nor counts as a miss',
    effects: [{ do: 'send', commands, to: SUMMARY }],
  };
  return {
    title: 'Finish early?',
    words: words.join(' ') || null,
    choices: [
      { label: 'Go on with the session', effects: [], to: RUNNER },
      close,
      discarding({ kind: 'finish', chosen: 2 }),
    ],
  };
}

export const FINISH_SCREEN = listScreen<Finish>({ list: finishList, last: [TO_RUNNER] });

const discarding = (back: Screen): Choice => ({
  label: 'Discard the session',
  detail: 'asks once more',
  effects: [],
  to: { kind: 'discard', chosen: 0, back },
});

/** The one act that no key takes back. */
function discardList({ model: { session }, screen }: Seen<Discard>): ChoiceList {
  const sets = session ? setsPutDown(session).length : 0;
  return {
    title: 'Discard the session?',
    words:
      sets === 0
        ? 'Nothing was done in it yet.'
        : `${howMany(sets, 'set')} would not count, and no key brings them back.`,
    choices: [
      { label: 'Keep it', effects: [], to: screen.back },
      {
        label: 'Discard it',
        effects: [
          { do: 'send', commands: [{ do: 'discard' }] },
          { do: 'leave', status: 0 },
        ],
      },
    ],
  };
}

export const DISCARD_SCREEN = listScreen<Discard>({ list: discardList, last: [BACK] });

const staleList = ({ model: { session } }: Seen<Stale>): ChoiceList => ({
  title: 'A session is still open',
  words: `${session ? `${openWords(session)} ` : ''}Nothing was done in it for over twelve hours.`,
  choices: [
    { label: 'Go on with it', effects: [], to: RUNNER },
    {
      label: 'Close it as it is',
      effects: [{ do: 'send', commands: [{ do: 'close', how: 'as-it-is' }], to: SUMMARY }],
    },
    discarding({ kind: 'stale', chosen: 2 }),
  ],
});

export const STALE_SCREEN = listScreen<Stale>({ list: staleList, last: [LEAVE_BY_TAP] });
