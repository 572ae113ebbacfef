import { problemText } from '../../text/problem.ts';
import { massOf, readQuantity } from '../../training/mass.ts';
import type { ProgramEdit } from '../../workbench/change-program.ts';
import type { Advice } from '../../workbench/look-back.ts';
import type { ActId } from '../binding.ts';
import { type Act, type Acting, ask, show, tell } from '../outcome.ts';
import { reviewScreen } from '../review-screen.ts';

const showReview: Act = (acting) =>
  acting.bench.watch.weightAdvice() === 'ask'
    ? show(acting, { kind: 'weight-question', scroll: 0 })
    : show(acting, reviewScreen(acting.bench));

const weightAnswer =
  (answer: 'yes' | 'no'): Act =>
  (acting) =>
    ask(acting, { do: 'change', change: { kind: 'weight-advice', answer }, to: 'review' });

const onAdvice =
  (act: (advice: Advice, acting: Acting) => ReturnType<Act>): Act =>
  (acting) => {
    const { screen } = acting.model.ui;
    if (screen.kind !== 'review') return ask(acting);
    const advice = screen.page.advice[screen.chosen];
    return advice ? act(advice, acting) : ask(acting);
  };

const take = onAdvice((advice, acting) => {
  const { finding } = advice;
  if (!advice.mayTake) return tell(acting, 'There is nothing in the program to change for it.');
  if (finding.changes.length === 0) return answered(acting, advice, 'yes', null);
  const edit = acting.bench.watch.programEdit(finding);
  if ('what' in edit) return tell(acting, problemText(edit));
  const back = acting.model.ui.screen;
  return show(acting, { kind: 'advice', advice, edit, back, scroll: 0 });
});

const answered = (
  acting: Acting,
  { finding }: Advice,
  answer: 'yes' | 'no',
  edit: ProgramEdit | null,
) => ask(acting, { do: 'change', change: { kind: 'answer', finding, answer, edit }, to: 'review' });

const nextAdvice: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'review') return ask(acting);
  const { advice } = screen.page;
  const answerable = advice.flatMap(({ mayRefuse }, index) => (mayRefuse ? [index] : []));
  const next = answerable.find((index) => index > screen.chosen) ?? answerable[0];
  return next === undefined ? ask(acting) : show(acting, { ...screen, chosen: next, scroll: 0 });
};

const write: Act = (acting) => {
  const { screen } = acting.model.ui;
  return screen.kind === 'advice'
    ? answered(acting, screen.advice, 'yes', screen.edit)
    : ask(acting);
};

const showWeigh: Act = (acting) =>
  show(acting, {
    kind: 'weigh',
    weighing: acting.bench.watch.weighing(),
    typed: '',
    doubted: null,
  });

const typeMass: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'weigh') return ask(acting);
  const typed = screen.typed + (acting.name === ',' ? '.' : acting.name);
  return /^\d{0,4}(\.\d{0,2})?$/.test(typed) ? show(acting, { ...screen, typed }) : ask(acting);
};

const rubOutMass: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'weigh') return ask(acting);
  return show(acting, { ...screen, typed: screen.typed.slice(0, -1) });
};

/** The last reading goes, whenever it was made; `u` brings it back. */
const removeLast: Act = (acting) => {
  const { screen } = acting.model.ui;
  const of = screen.kind === 'weigh' ? screen.weighing.last : null;
  return of === null
    ? tell(acting, 'There is no weigh-in to delete.')
    : ask(acting, { do: 'change', change: { kind: 'delete', of }, to: 'here' });
};

/** A reading that looks like a slip of the finger counts only once it was typed a second time. */
const keepMass: Act = (acting) => {
  const { screen } = acting.model.ui;
  if (screen.kind !== 'weigh') return ask(acting);
  const { typed, doubted, weighing } = screen;
  const quantity = readQuantity(typed, weighing.unit);
  if (!quantity) return tell(acting, 'Type your body weight first, such as 82.4.');
  const mass = massOf(quantity);
  const doubt = doubted?.amount === quantity.amount ? null : acting.bench.watch.doubt(mass);
  if (doubt) {
    const { what, why = '' } = doubt.problem;
    const asked = show(acting, { ...screen, typed: '', doubted: quantity });
    const words = [what, why, doubt.meant === null ? '' : meantText(doubt.problem.fix)];
    const message = [
      ...words.filter(Boolean),
      `Type ${typed} once more to keep it all the same.`,
    ].join(' ');
    return { ...asked, ui: { ...asked.ui, message } };
  }
  return ask(acting, { do: 'change', change: { kind: 'weigh', mass }, to: 'preview' });
};

/** The question alone: what to do about it is said by the screen's own keys. */
const meantText = (fix = ''): string => fix.slice(0, fix.indexOf('?') + 1);

/** What keys do on the review and on the scales. */
export const REVIEW_ACTS = {
  review: showReview,
  'take-advice': take,
  refuse: onAdvice((advice, acting) =>
    advice.mayRefuse
      ? answered(acting, advice, 'no', null)
      : tell(acting, 'This is no advice, so there is nothing to put aside.'),
  ),
  'next-advice': nextAdvice,
  weigh: showWeigh,
} satisfies Partial<Record<ActId, Act>>;

export const WEIGHT_QUESTION_ACTS = {
  yes: weightAnswer('no'),
  no: weightAnswer('yes'),
  back: (acting) => show(acting, reviewScreen(acting.bench)),
} satisfies Partial<Record<ActId, Act>>;

export const ADVICE_ACTS = { choose: write } satisfies Partial<Record<ActId, Act>>;

export const WEIGH_ACTS = {
  type: typeMass,
  'rub-out': rubOutMass,
  choose: keepMass,
  delete: removeLast,
} satisfies Partial<Record<ActId, Act>>;
