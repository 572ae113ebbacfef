import type { GearPart } from '../training/change-gear.ts';
import type { OptionRow } from './call.ts';

/** Options that change the gear, by their name in a call. */
export const GEAR_OPTIONS = {
  defaults: {
    flags: '--defaults <kg|lb>',
    does: 'begin again from a usual home gym',
  },
  unit: {
    flags: '--unit <kg|lb>',
    does: 'unit of numbers written without one',
  },
  bars: {
    flags: '--bars <list...>',
    does: 'bars by name, others stay: "bar=20kg, short bar=15kg"; =0 takes one away',
  },
  collars: {
    flags: '--collars <list...>',
    does: 'both collars of a bar together: "bar=5kg"',
  },
  plates: {
    flags: '--plates <list...>',
    does: 'how many single plates of a kind, others stay: "20kg=4, 1.25kg=2, 45lb=2"',
  },
  measured: {
    flags: '--measured <list...>',
    does: 'what a plate really weighs: "20kg=19.8kg"; =0 trusts the stamp again',
  },
  dumbbells: {
    flags: '--dumbbells <list...>',
    does: 'fixed dumbbells, beside those you have: "12kg=2", "2kg..20kg by 2kg=2"; =0 takes them away',
  },
  handles: {
    flags: '--handles <list...>',
    does: 'dumbbell handles to load with plates, beside those you have: "2kg=2"; =0 takes them away',
  },
  stacks: {
    flags: '--stacks <list...>',
    does: 'machines by name, others stay: "pulldown=5kg..100kg by 5kg"; =0 takes one away',
  },
  bands: {
    flags: '--bands <list...>',
    does: 'bands by name, others stay, and the body weight that each takes: "light=10kg"; =0 takes one away',
  },
  freeStep: {
    flags: '--free-step <mass>',
    does: 'step of loads that are none of these: 2.5kg',
  },
  belt: {
    flags: '--belt <yes|no>',
    does: 'can plates hang from your body',
  },
  safeties: {
    flags: '--safeties <yes|no>',
    does: 'are there pins, straps or arms that catch the bar',
  },
  stations: {
    flags: '--stations <list...>',
    does: 'all of these that you have: "bench, rack, chin-up bar, dip station", or none',
  },
} as const satisfies Record<GearPart, OptionRow>;
