import { useIsScreenReaderEnabled } from 'ink';
import { useSyncExternalStore } from 'react';
import type { Gear } from '../../training/gear.ts';
import { line } from '../line.ts';
import { Lines } from '../lines.tsx';
import type { Size } from '../model.ts';
import { onScreen, type ScreenPorts } from '../on-screen.ts';
import type { THEMES } from '../theme.ts';
import { formLines, spokenFormLines } from './form-lines.ts';
import { type FormState, formOf } from './form-state.ts';
import { notSaved, pressForm } from './press-form.ts';

interface Shown {
  readonly state: FormState;
  readonly size: Size;
}

interface FormProps {
  readonly subscribe: (listener: () => void) => () => void;
  readonly shown: () => Shown;
  readonly theme: keyof typeof THEMES;
}

function Form({ subscribe, shown, theme }: FormProps) {
  const { state, size } = useSyncExternalStore(subscribe, shown);
  return useIsScreenReaderEnabled() ? (
    <Lines lines={spokenFormLines(state).map((text) => line(text))} theme='plain' />
  ) : (
    <Lines lines={formLines(state, size)} theme={theme} />
  );
}

/**
 * Runs the form of what the lifter owns, and gives back the exit status.
 * @param keep keeps the gear; gives the sentence why it cannot, or null
 */
export function gearForm(
  gear: Gear,
  keep: (gear: Gear) => string | null,
  theme: keyof typeof THEMES,
  ports: ScreenPorts,
): Promise<number> {
  return onScreen(ports, ({ size, leave }) => {
    const listeners = new Set<() => void>();
    let shown: Shown = { state: formOf(gear), size };
    const show = (next: Partial<Shown>) => {
      shown = { ...shown, ...next };
      for (const listener of listeners) listener();
    };
    const subscribe = (listener: () => void) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    };
    return {
      view: <Form subscribe={subscribe} shown={() => shown} theme={theme} />,
      taps: false,
      opened: () => {},
      key: (key) => {
        const { state, effect } = pressForm(shown.state, key);
        show({ state });
        if (effect?.do === 'leave') leave(effect.status);
        if (effect?.do !== 'save') return;
        const problem = keep(effect.gear);
        if (problem === null) leave(0);
        else show({ state: notSaved(state, problem) });
      },
      resized: (next) => show({ size: next }),
      stopped: () => {},
    };
  });
}
