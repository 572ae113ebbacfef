/** Who is to see a doctor first. */
export const DOCTOR_FIRST =
  'See a doctor before you start if any of the questions is a yes, if you are pregnant or gave birth in the last months, if you are under 18, or if you live with, or have had, an eating disorder. Weight-loss targets are not for these; training works without them.';

/**
 * Said once before the first session, always in `help cautions` and in the README. Local rules and
 * licensed practice come before anything that this program prints.
 */
export const CAUTIONS: readonly string[] = [
  'This log does arithmetic; it is not medical advice. Local rules and the word of a licensed professional come first.',
  DOCTOR_FIRST,
  'Stop, and get help, at chest pain or pressure, fainting, dizziness, unusual breathlessness, or a sharp or spreading pain. Pain is not effort: mark it.',
  'Squat and bench press alone only inside safeties set to catch the bar, or choose another lift. Lifters training alone have died under the bar.',
];

/** What a doctor should be asked about first; each is answered yes where any of it is so. */
export const READINESS_QUESTIONS: readonly string[] = [
  'Heart or blood pressure: a diagnosis, a medicine you take for it, or a limit that a doctor set?',
  'Lately: chest pain or pressure, fainting, or dizzy spells?',
  'Bone, joint or muscle: anything that effort makes worse?',
  'Anything else about your health that a doctor should hear of before you train hard?',
];

/** Asked before anything is said about how fast to lose weight; no reason is ever kept. */
export const WEIGHT_QUESTION =
  'Nothing is said about losing weight, and a cut is trained as maintenance, until one question is answered: are you under 18 or pregnant, or do you live with, or have you had, an eating disorder? If none of it is so, say "holdfast settings weight-advice yes"; if any of it is, or you would rather not say, "holdfast settings weight-advice no". Only that yes or no is kept.';
