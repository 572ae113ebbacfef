import type { ActId } from '../binding.ts';
import { mostScroll } from '../long-page.ts';
import { type Act, ask, draftOf, RUNNER, show, tell, withDraft } from '../outcome.ts';
import type { ScreenKind } from '../ui-state.ts';

const INTERRUPTED = 130;

/** Reading down the list changes nothing: only the other key begins where the mark stands. */
const begin =
  (where: 'first' | 'here'): Act =>
  (acting) => {
    const { screen } = acting.model.ui;
    if (screen.kind !== 'preview') return ask(acting);
    const { today, chosen } = screen;
    const exercise = where === 'here' ? chosen : null;
    return ask(acting, {
      do: 'begin',
      day: today.prescription.day,
      within: today.within,
      exercise,
    });
  };

const otherDay: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'preview') return ask(acting);
  const { days, prescription, within } = screen.today;
  const next = days[(days.indexOf(prescription.day) + 1) % days.length];
  const today = acting.bench.today(next, within);
  return show(acting, { kind: 'preview', today, chosen: 0 });
};

/** Minutes to cut a day to, one after the other; then it is whole again. */
const TIMES = [60, 45, 30, 20, 15] as const;

const lessTime: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'preview') return ask(acting);
  const { prescription, within, minutes } = screen.today;
  const less = TIMES.find((time) => time < Math.min(minutes, within ?? Number.POSITIVE_INFINITY));
  const today = acting.bench.today(prescription.day, less ?? null);
  return show(acting, { kind: 'preview', today, chosen: 0 });
};

const answer =
  (cautions: 'read' | 'doctor-first'): Act =>
  (acting) => {
    const { choices, ui } = acting.model;
    if (
      ui.screen.kind === 'cautions' &&
      ui.screen.scroll < mostScroll(acting.model, acting.bench)
    ) {
      return tell(acting, 'Read to the end of the questions first: space goes on.');
    }
    const to = { kind: 'preview', today: acting.bench.today(), chosen: 0 } as const;
    return ask(acting, { do: 'keep', choices: { ...choices, cautions }, to });
  };

const back: Act = (acting) => {
  const { screen } = acting.model.ui;
  if ('back' in screen) return show(acting, screen.back);
  return FROM_PREVIEW.has(screen.kind)
    ? show(acting, { kind: 'preview', today: acting.bench.today(), chosen: 0 })
    : show(acting, RUNNER);
};

/** Screens that are only reached from the preview. */
const FROM_PREVIEW: ReadonlySet<ScreenKind> = new Set<ScreenKind>(['review', 'weigh', 'lifts']);

/** `esc` first puts away what was typed; `q` means it. */
const leave: Act = (acting) =>
  acting.name === 'esc' && draftOf(acting.model)
    ? withDraft(acting, null)
    : ask(acting, { do: 'leave', status: 0 });

/** What keys do to the screens themselves. */
export const SCREEN_ACTS = {
  begin: begin('first'),
  'begin-here': begin('here'),
  'other-day': otherDay,
  'less-time': lessTime,
  yes: answer('doctor-first'),
  no: answer('read'),
  back,
  leave,
  interrupt: (acting) => ask(acting, { do: 'leave', status: INTERRUPTED }),
  help: (acting) => ({
    ui: { ...acting.model.ui, help: { scroll: 0 }, message: null },
    effects: [],
  }),
  settings: (acting) => show(acting, { kind: 'settings', back: acting.model.ui.screen, chosen: 0 }),
  type: (acting) => ask(acting, { do: 'type', key: { kind: 'named', name: 'enter' } }),
} satisfies Partial<Record<ActId | 'begin', Act>>;
