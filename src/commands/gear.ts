import { keepGear } from '../lifter/gear.ts';
import { kitsOf } from '../lifter/kits.ts';
import { type Lifter, openLifter } from '../lifter/open-lifter.ts';
import type { KeepSettings } from '../lifter/ports.ts';
import { gearSchema } from '../settings/gear-schema.ts';
import { jsonText } from '../text/json-text.ts';
import { nearestKey } from '../text/nearest.ts';
import { problemText, Refusal, WrongUse } from '../text/problem.ts';
import { GEAR_CHANGES, type GearPart } from '../training/change-gear.ts';
import { gearProblems, gearSurprises } from '../training/check-gear.ts';
import { GEAR_LIMITS, type Gear } from '../training/gear.ts';
import { nothingIn } from '../training/kits.ts';
import { askYesNo, isAttended } from './ask-yes-no.ts';
import type { Call, Run } from './call.ts';
import type { GearJson } from './gear-json-schema.ts';
import { GEAR_OPTIONS } from './gear-option-rows.ts';
import { gearText } from './gear-text.ts';
import { kitOption } from './operands.ts';
import { tellProblems } from './tell-problems.ts';
import { textSize } from './text-size.ts';

/** Shows what the lifter owns, after the changes that the options ask for. */
export const run: Run = async (call) => {
  const lifter = openLifter(call.ports, call.global);
  const { settings } = lifter.settings();
  tellProblems(call, lifter);
  const named = kitOption(call);
  if (named !== null) return aboutKit(call, lifter, named);
  const before = lifter.gear();
  const changed = changedGear(before, call.options);
  if (changed) {
    if (call.options.new !== true) refuseNearNames(before, changed);
    if (call.options.defaults !== undefined && !(await mayBeginAgain(call, lifter))) {
      call.warn('Nothing was changed.');
      return 1;
    }
    const problem = keepGear(lifter, changed, await settingsKeeper(lifter));
    call.tell('Saved; what was not named stays as it was.');
    if (problem) call.warn(problemText(problem));
  }
  if (call.options.edit === true) {
    const { editGear } = await import('./edit-gear.ts');
    const status = await editGear(call, lifter, await settingsKeeper(lifter));
    if (status !== 0) return status;
  }
  const gear = lifter.gear();
  const isSet = lifter.journal().history().gear !== null || settings.gear !== null;
  if (call.global.json) {
    call.print(jsonText({ schema: 1, set: isSet, gear } satisfies GearJson));
    return 0;
  }
  if (!isSet) {
    call.tell(
      'This is a usual home gym, until you say what you own: "holdfast gear --edit" opens a form, and "holdfast gear --help" shows the options.',
    );
  }
  call.print(gearText(gear, textSize(call.ports).width).join('\n'));
  for (const problem of gearSurprises(gear)) call.warn(problemText(problem));
  return 0;
};

/** Shows a kit of another place, after the changes that the options ask for; a new one has what they name. */
function aboutKit(call: Call, lifter: Lifter, named: string): number {
  const name = named.trim();
  if (name === '' || name.length > GEAR_LIMITS.name || /\p{Cc}/u.test(name)) {
    throw new WrongUse({
      what: '--kit needs a short name, in one line.',
      fix: 'For example: --kit hotel.',
    });
  }
  const kits = () => kitsOf(lifter.journal().history(), lifter.unit());
  const known = kits().find((kit) => kit.name === name);
  if (call.options.forget === true) {
    if (
      !lifter
        .journal()
        .history()
        .kits.some((kit) => kit.name === name)
    ) {
      throw new Refusal({ what: `You keep no kit "${name}".`, fix: 'Nothing was forgotten.' });
    }
    lifter.journal().record({ type: 'kit-kept', name, gear: null });
    call.print(`Forgotten: the kit ${name}.`);
    return 0;
  }
  const before = known?.gear ?? nothingIn(lifter.unit());
  const changed = changedGear(before, call.options);
  if (!known && !changed) {
    throw new WrongUse({
      what: `You keep no kit "${name}" yet.`,
      fix: `Say what is there: --kit "${name}" --dumbbells "2kg..10kg by 2kg=2" --stations bench.`,
    });
  }
  if (changed) {
    const problems = gearProblems(changed);
    if (problems.length > 0) throw new Refusal(...problems);
    lifter.journal().record({ type: 'kit-kept', name, gear: gearSchema().parse(changed) });
    call.tell(`Kept as the kit ${name}: j on the preview, or --kit, trains with it for a day.`);
  }
  const gear = changed ?? before;
  if (call.global.json) call.print(jsonText({ schema: 1, set: true, gear } satisfies GearJson));
  else call.print(gearText(gear, textSize(call.ports).width).join('\n'));
  return 0;
}

/** What was said of the gear is lost then, so it is asked about. */
async function mayBeginAgain(call: Call, lifter: Lifter): Promise<boolean> {
  if (lifter.knownGear() === null || call.options.sure === true) return true;
  if (isAttended(call)) {
    const question = 'A usual home gym in place of all your gear, yes or no?';
    return askYesNo(call, question, 'no');
  }
  throw new Refusal({
    what: 'Your gear would be replaced by a usual home gym.',
    fix: 'Add --sure if that is meant.',
  });
}

/** A slip in a name would make a second bar of the first, and both would be offered. */
function refuseNearNames(before: Gear, after: Gear): void {
  for (const kind of ['bars', 'stacks', 'bands'] as const) {
    const known = before[kind].map(({ name }) => name);
    for (const { name } of after[kind]) {
      const near = known.includes(name) ? null : nearestKey(name, known);
      if (near === null) continue;
      throw new Refusal({
        what: `Your gear has no "${name}" among its ${kind}, but a "${near}".`,
        fix: `Write "${near}" if that is meant; add --new if this is another one.`,
      });
    }
  }
}

/** What writes settings is slow to load, and most calls only show. */
async function settingsKeeper({ folders }: Lifter): Promise<KeepSettings> {
  const { writeSettings } = await import('../settings/write-settings.ts');
  return (change) => writeSettings(folders.config, change);
}

/**
 * The gear with every option of the call applied; null where there is none.
 * @throws Refusal for what cannot be read
 */
function changedGear(gear: Gear, options: Call['options']): Gear | null {
  const asked = Object.entries(GEAR_CHANGES).filter(([key]) => options[key] !== undefined);
  if (asked.length === 0) return null;
  return asked.reduce((now, [key, change]) => {
    const [option = key] = GEAR_OPTIONS[key as GearPart].flags.split(' ');
    return change(now, [options[key] ?? ''].flat().map(String), option);
  }, gear);
}
