import type { FindingWords } from '../../lifter/rules.ts';
import { cutTo } from '../../text/columns.ts';
import { problemText } from '../../text/problem.ts';
import { safeText } from '../../text/safe-text.ts';
import { BLANK, indented, type Line, line, paragraph } from '../line.ts';
import { type ChoiceList, listScreen } from '../list.ts';
import { ask, type Seen, show, tell } from '../outcome.ts';
import { pageScreen, titled } from '../page.ts';
import { BACK, type KeyRow } from '../screen.ts';
import type { Screen } from '../ui-state.ts';

type Changes = Extract<Screen, { kind: 'changes' }>;
type Unsaved = Extract<Screen, { kind: 'unsaved' }>;
type Findings = Extract<Screen, { kind: 'findings' }>;

/** What the check says of the program, as it is being changed or as it lies on the disk; why it cannot be said. */
export function findingsScreen({ screen: back, coach }: Seen): Findings | string {
  const open = back.kind === 'program' ? back.sheet : coach.editor.open();
  if ('what' in open) return problemText(open);
  const { program } = open;
  const findings = open.findings.toSorted((a, b) => rankOf(a) - rankOf(b));
  return { kind: 'findings', findings, file: program.file, back, scroll: 0 };
}

/** What stops the session first, what was accepted last; else as they stand in the file. */
const rankOf = (finding: FindingWords): number =>
  isStopping(finding) ? 0 : finding.accepted === null ? 1 : 2;

/** Does it let no session begin? */
export const isStopping = ({ severity, accepted }: FindingWords): boolean =>
  severity === 'error' && accepted === null;

/** From the program. */
export const FINDINGS_KEY: KeyRow = {
  keys: ['w'],
  label: 'why the check objects',
  press: (acting) => {
    const found = findingsScreen(acting);
    return typeof found === 'string' ? tell(acting, found) : show(acting, found);
  },
};

/** What would be written. */
const changesAll = ({ screen: { lines, back } }: Seen<Changes>, columns: number): Line[] => [
  ...titled('What changes', `In ${fileName(back.sheet.program.file)}`, columns),
  ...(lines.length === 0 ? [line('Nothing was changed.')] : []),
  ...lines.map(({ kind, text }) =>
    line(cutTo(`${MARKS[kind]}${safeText(text)}`, columns), kind === 'same' ? 'plain' : 'strong'),
  ),
];

const fileName = (path: string): string => safeText(path.split(/[\\/]/).at(-1) ?? path);

const MARKS = { gone: '- ', new: '+ ', same: '  ', 'left-out': '  …' } as const;

/** What the check says, each with what would mend it. */
const findingsAll = ({ screen: { findings, file } }: Seen<Findings>, columns: number): Line[] => [
  ...titled('What the check says', fileName(file), columns),
  ...(findings.length === 0 ? [line('The program fits its aim.')] : []),
  ...findings.flatMap((finding) => oneFinding(finding, columns)),
];

function oneFinding(
  { severity, place, text, fix, rule, source, accepted }: FindingWords,
  columns: number,
): Line[] {
  const where = place ? `line ${place.line}: ` : '';
  const word = accepted === null ? severity : 'accepted';
  const inside = (words: string) =>
    paragraph(safeText(words), columns - 2).map((one) => indented(one, 2));
  return [
    ...paragraph(`${word}: ${where}${safeText(text)}`, columns, 'strong', 2),
    ...inside(accepted ?? fix),
    ...inside(`rule ${rule} · ${source}`),
    BLANK,
  ];
}

export const FINDINGS_SCREEN = pageScreen<Findings>({
  all: findingsAll,
  last: [{ ...BACK, tap: { at: 0, says: 'BACK' } }],
});

export const CHANGES_SCREEN = pageScreen<Changes>({
  all: changesAll,
  first: [
    {
      keys: ['space', 'enter'],
      label: 'write it',
      footer: 0,
      tap: { at: 0 },
      press: (acting) =>
        ask(acting, { do: 'save-program', sheet: acting.screen.back.sheet, to: 'preview' }),
    },
  ],
  last: [BACK],
});

const unsavedList = ({ screen: { back } }: Seen<Unsaved>): ChoiceList => ({
  title: 'Save the changes?',
  words: 'The file is as it was until they are saved.',
  choices: [
    { label: 'Save them', effects: [{ do: 'save-program', sheet: back.sheet, to: 'preview' }] },
    { label: 'Throw them away', effects: [], to: back.back },
    { label: 'Go on changing', effects: [], to: back },
  ],
});

export const UNSAVED_SCREEN = listScreen<Unsaved>({ list: unsavedList, last: [BACK] });
