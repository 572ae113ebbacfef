import { textTable } from '../report/table.ts';
import { wrapped } from '../text/columns.ts';
import { type Bar, type Gear, STATIONS } from '../training/gear.ts';
import { loadsFor } from '../training/loads.ts';
import { massNumber, massOf, massText, type Quantity, quantityText } from '../training/mass.ts';

type Cells = readonly [what: string, mass: string, owned: string, note: string];

const COLUMNS = [
  { heading: 'gear', align: 'left' },
  { heading: 'mass', align: 'right' },
  { heading: 'owned', align: 'right' },
  { heading: '', align: 'left', dropFirst: 1 },
] as const;

/** What is owned as a table of at most `width` columns; the heaviest of a kind first. */
export function gearText(gear: Gear, width: number): string[] {
  const heaviest = <One>(list: readonly One[], mass: (one: One) => Quantity): readonly One[] =>
    [...list].sort((a, b) => massOf(mass(b)) - massOf(mass(a)));
  const rows: Cells[] = [
    ...gear.bars.map(
      (bar, at): Cells => ['bar', quantityText(bar.mass), '', barNote(gear, bar, at)],
    ),
    ...heaviest(gear.plates, ({ stamped }) => stamped).map(
      ({ stamped, count, measured }): Cells => [
        'plate',
        quantityText(stamped),
        `${count}`,
        measured ? `weighs ${quantityText(measured)}` : '',
      ],
    ),
    ...heaviest(gear.dumbbells, ({ stamped }) => stamped).map(
      ({ stamped, count }): Cells => ['dumbbell', quantityText(stamped), `${count}`, ''],
    ),
    ...gear.handles.map(
      ({ mass, count }): Cells => ['handle', quantityText(mass), `${count}`, 'takes plates'],
    ),
    ...gear.stacks.map(
      ({ name, lowest, step, highest }): Cells => [
        'stack',
        quantityText(highest),
        '',
        `${name}: from ${quantityText(lowest)} by ${quantityText(step)}`,
      ],
    ),
    ...gear.bands.map(
      ({ name, assistance }): Cells => ['band', quantityText(assistance), '', `${name}: takes off`],
    ),
    ['belt', '', yesOrNo(gear.belt), 'plates hang from the body'],
    ['safeties', '', yesOrNo(gear.safeties), 'catch the bar in squat and bench press'],
    ['stations', '', '', stationsText(gear)],
    ['step', quantityText(gear.freeStep), '', 'of loads that are none of these'],
  ];
  // What is left beside the other columns, each two apart; a note too long for it goes on below.
  const masses = Math.max(...rows.map(([, mass]) => mass.length));
  const room = Math.max(20, width - 'dumbbell'.length - masses - 'owned'.length - 6);
  const lines = rows.flatMap(([what, mass, owned, note]) =>
    (note === '' ? [''] : wrapped(note, room)).map(
      (line, at): Cells => (at === 0 ? [what, mass, owned, line] : ['', '', '', line]),
    ),
  );
  return textTable(COLUMNS, lines, width);
}

const stationsText = ({ stations }: Gear): string =>
  stations === undefined
    ? `${STATIONS.join(', ')} (until you say which)`
    : stations.join(', ') || 'none';

const yesOrNo = (is: boolean): string => (is ? 'yes' : 'no');

function barNote(gear: Gear, bar: Bar, at: number): string {
  const { lightest, heaviest } = loadsFor(gear, {
    loading: 'barbell',
    hands: 1,
    bar: bar.name,
    step: null,
  });
  const notes = [
    bar.name,
    at === 0 && gear.bars.length > 1 ? 'used where none is named' : '',
    bar.collars.amount > 0 ? `collars ${quantityText(bar.collars)}` : '',
    heaviest === null
      ? ''
      : `makes ${massNumber(lightest, gear.unit)} to ${massText(heaviest, gear.unit)}`,
  ];
  return notes.filter((note) => note !== '').join(', ');
}
