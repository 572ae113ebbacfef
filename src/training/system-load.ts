import { type Mass, plus, share } from './mass.ts';

/**
 * What is really lifted in a body weight lift: the body's share and the setting (added −
 * assistance). Null before the first weigh-in, when body mass is not known.
 */
export function systemLoad(setting: Mass, bodyMass: Mass | null, bodyShare: number): Mass | null {
  return bodyMass === null ? null : plus(share(bodyMass, bodyShare), setting);
}
