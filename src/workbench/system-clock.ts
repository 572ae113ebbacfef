import { readFileSync } from 'node:fs';
import { uptime } from 'node:os';
import type { Clock } from './clock.ts';

/**
 * The machine's clock. `up` counts sleep on Linux and Windows (`os.uptime`, CLOCK_BOOTTIME on
 * Linux) and is only trusted where a boot id tells one run of the machine from the next.
 */
export function systemClock(platform: NodeJS.Platform): Clock {
  const boot = bootId(platform);
  return {
    read: () => ({
      wall: Date.now(),
      up: boot === null ? null : Math.round(uptime() * 1000),
      boot,
    }),
    zone: (wall) => -new Date(wall).getTimezoneOffset(),
    after: (ms, act) => {
      const timer = setTimeout(act, ms);
      return () => clearTimeout(timer);
    },
  };
}

function bootId(platform: NodeJS.Platform): string | null {
  if (platform !== 'linux') return null;
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    // Not every container has it; the wall clock serves then.
    return null;
  }
}
