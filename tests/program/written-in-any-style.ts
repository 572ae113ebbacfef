import fc from 'fast-check';

/** A line of a made file, and whose it is: an exercise as `day.place`, or nobody's. */
interface MadeLine {
  readonly text: string;
  readonly of: string | null;
}

export interface MadeFile {
  readonly text: string;
  readonly lines: readonly MadeLine[];
  readonly newline: string;
  /** Lifts of each day, in order. */
  readonly days: readonly (readonly string[])[];
  /** Style of each day's list. */
  readonly styles: readonly Style[];
}

type Style = 'dashes' | 'brackets' | 'one line';
type Pick = <T>(...of: T[]) => T;

const LIFTS = [
  'back-squat',
  'bench-press',
  'barbell-row',
  'overhead-press',
  'dumbbell-curl',
  'crunch',
  'leg-press',
  'romanian-deadlift',
];

/** Programs as people write them: any indent, blocks and brackets mixed, comments everywhere. */
export const anyStyle = (): fc.Arbitrary<MadeFile> =>
  fc
    .infiniteStream(fc.nat(999))
    .map((stream) => made((...of) => of[stream.next().value % of.length] as never));

function made(pick: Pick): MadeFile {
  const lines: MadeLine[] = [];
  const put = (text: string, of: string | null = null) => lines.push({ text, of });
  const step = pick(2, 4);
  const flat = pick(true, false);
  const wide = pick(2, 2, 2, 4);
  const newline = pick('\n', '\n', '\r\n');
  const blankBetween = pick(true, false, null);
  const comment = (text: string) => pick('', '', '', ` # ${text}`, `     # ${text} – ünï ✓`);
  const quote = (text: string) => pick(text, text, `"${text}"`, `'${text}'`);
  if (pick(true, false)) put('# yaml-language-server: $schema=./program.schema.json');
  if (pick(true, false)) put('');
  put(`name:   ${pick('Spring', '"Frühling – Kraft"', "'It''s mine'")}${comment('mine')}`);
  put(`unit: ${quote(pick('kg', 'lb'))}${comment('on every plate')}`);
  if (pick(true, false)) put('days_per_week:   3      # aligned');
  put('');
  put(`days:${comment('one after the other')}`);
  const dayIndent = flat ? 0 : step;
  const dayCount = pick(1, 2, 3);
  const days: string[][] = [];
  const styles: Style[] = [];
  for (let day = 0; day < dayCount; day += 1) {
    if (day > 0 && pick(true, false)) put('');
    if (day > 0 && pick(true, false, false))
      put(`${' '.repeat(dayIndent)}# Day ${day + 1}: heavy.`);
    const inside = dayIndent + 2;
    put(`${' '.repeat(dayIndent)}- name: ${quote(`Day ${'ABC'[day]}`)}${comment('a day')}`);
    const count = pick(1, 2, 3, 4);
    const style = pick<Style>('dashes', 'dashes', 'dashes', 'brackets', 'one line');
    styles.push(style);
    const lifts = Array.from({ length: count }, (_, at) => LIFTS[(day * 3 + at) % 8] ?? '');
    days.push(lifts);
    const list = inside + (flat ? 0 : step);
    if (style === 'dashes') {
      put(`${' '.repeat(inside)}exercises:${comment('in this order')}`);
      for (const [at, lift] of lifts.entries()) {
        if (at > 0 && (blankBetween ?? pick(true, false))) put('');
        dashed(lift, `${day}.${at}`, list);
      }
    } else if (style === 'brackets') {
      put(`${' '.repeat(inside)}exercises: [${comment('in this order')}`);
      for (const [at, lift] of lifts.entries()) {
        const comma = at < count - 1 || pick(true, false) ? ',' : '';
        put(`${' '.repeat(inside + 2)}${inline(lift)}${comma}${comment('so')}`, `${day}.${at}`);
      }
      put(`${' '.repeat(inside)}]`);
    } else {
      const all = lifts.map((lift) => inline(lift)).join(pick(', ', ','));
      put(`${' '.repeat(inside)}exercises: [${pick('', ' ')}${all}${pick('', ' ', ', ')}]`);
    }
  }
  if (pick(true, false)) put('');
  if (pick(true, false)) put('# The end.');
  const text = lines.map((line) => line.text).join(newline) + pick(newline, newline, '');
  return { text: `${pick('', '', '\ufeff')}${text}`, lines, newline, days, styles };

  function inline(lift: string): string {
    const cluster = pick(true, false, false);
    const tight = pick(' ', '');
    return cluster
      ? `{${tight}lift: ${lift}, cluster: { lead: 12-15${pick(', most_sets: 4', '')} }${tight}}`
      : `${pick('', '', `&${lift} `)}{${tight}lift: ${lift}, sets: 3, reps: ${quote('5-8')}${tight}}`;
  }

  function dashed(lift: string, of: string, column: number): void {
    const dash = ' '.repeat(column);
    const key = ' '.repeat(column + wide);
    if (pick(true, false, false, false)) {
      put(`${dash}# - lift: leg-curl      # not now`);
      put(`${dash}#   sets: 3`);
    }
    if (pick(true, false, false)) put(`${dash}# Strict, – "no" swing: yes.`, of);
    if (pick(true, false, false, false)) {
      put(`${dash}-${' '.repeat(wide - 1)}${inline(lift)}${comment('short')}`, of);
      return;
    }
    const own = (text: string) => put(`${key}${text}`, of);
    put(`${dash}-${' '.repeat(wide - 1)}lift: ${quote(lift)}`, of);
    if (pick(true, false, false)) own('# Keys of my own.');
    const work = pick('cluster', 'short cluster', 'sets', 'sets');
    if (work === 'cluster') {
      own(`cluster:${comment('fast')}`);
      put(`${key}${' '.repeat(step)}lead:   12-15${comment('slow')}`, of);
      if (pick(true, false)) put(`${key}${' '.repeat(step)}most_sets:   4${comment('or 5')}`, of);
    } else if (work === 'short cluster') {
      own(`cluster: {lead: 12-15${pick(', most_sets: 4', '')}}${comment('fast')}`);
    } else {
      own(`sets:    ${pick('', '', '&n ')}3${comment('four when I sleep well')}`);
      own(`reps:    ${quote('5-8')}`);
    }
    const note = pick('block', 'quoted', 'none', 'none');
    if (note === 'block') {
      own(pick('note: |', 'note: >-'));
      put(`${key}${' '.repeat(step)}Slow down;`, of);
      put(`${key}${' '.repeat(step)}# pause: below.`, of);
    } else if (note === 'quoted') {
      own('note: "down');
      put(`${key}  and up"`, of);
    }
    if (pick(true, false, false)) own('# rest: 3 min');
  }
}
