import type { DayFile } from '#lib/episode/also-filmed';
import type { Episode } from '#lib/episode/schema';
import { sourceText } from '#lib/safety/caution';
import { daySheet, type DaySheetRow, type SoonAfter } from '#lib/shoot/day-sheet';
import { clockText, degreesText } from '#lib/shoot/day-words';
import type { EntryKind, ShootPlan } from '#lib/shoot/plan';
import { csvText } from '#lib/units/csv';

const HEAD = [
  'start',
  'end',
  'minutes',
  'what',
  'kind',
  'dish',
  'who',
  'camera',
  'oven',
  'oven temperature',
  'racks',
  'burners',
  'appliance',
  'inside temperature',
  'rest (min)',
  'shots',
  'note',
  'mind',
  'why then',
] as const;
type Column = (typeof HEAD)[number];

const KINDS: Readonly<Record<EntryKind, string>> = {
  step: 'step',
  preheat: 'oven heats',
  coolDown: 'oven cools',
  washUp: 'washing up',
  cameraMove: 'camera moves',
  appointment: 'appointment',
};

/**
 * The day sheet as a table for other programs (`csvText`): a record for each entry in the order of doing it, with
 * what to mind at it, then one for each caution of the day. Clock times are local; degrees are in the region's unit.
 */
export function daySheetCsv(file: DayFile, plan: ShootPlan): string {
  const sheet = daySheet(file, plan);
  const { region } = file.episode;
  const ovens = new Map(file.kitchen.ovens.map(({ id, name }) => [id, name]));
  const cautions = [
    ...plan.broken.map(({ message }) => `no order found that keeps this: ${message}`),
    ...sheet.lots.map(
      ({ name, minutes, limitMin }) =>
        `${name}: ${minutes} min out of the refrigerator in all, of ${limitMin} at most`,
    ),
    ...sheet.cautions.map(({ text, source }) => `${text} [${sourceText(source)}]`),
    sheet.localCode,
  ];
  return csvText(HEAD, [
    ...sheet.rows.map((row) => record(entryCells(row, sheet.soonAfter, ovens, region))),
    ...cautions.map((mind) => record({ kind: 'caution', mind })),
  ]);
}

type Cells = Partial<Record<Column, string>>;

const record = (cells: Cells): string[] => HEAD.map((column) => cells[column] ?? '');

function entryCells(
  row: DaySheetRow,
  soonAfter: readonly SoonAfter[],
  ovens: ReadonlyMap<string, string>,
  region: Episode['region'],
): Cells {
  const { entry, inside } = row;
  const soon = soonAfter.filter(({ stepId }) => stepId === entry.stepId);
  return {
    start: clockText(entry.startMin),
    end: clockText(entry.endMin),
    minutes: String(entry.endMin - entry.startMin),
    what: entry.title,
    kind: KINDS[entry.kind],
    dish: row.segmentTitle ?? '',
    who: entry.hands ? 'hands' : 'by itself',
    camera: entry.onCamera ? 'camera' : '',
    oven: ovens.get(entry.ovenId ?? '') ?? '',
    'oven temperature': entry.milliC === null ? '' : degreesText(entry.milliC, region),
    racks: count(entry.racks),
    burners: count(entry.burners),
    appliance: row.appliance ?? '',
    'inside temperature': inside === null ? '' : degreesText(inside.milliC, region),
    'rest (min)': inside === null || inside.restS === 0 ? '' : String(Math.ceil(inside.restS / 60)),
    shots: joined(row.shots.map((shot) => [shot.title, shot.framing].filter(Boolean).join(', '))),
    note: row.note,
    mind: joined([...row.remarks, ...soon.map(({ text }) => text)]),
    'why then': entry.why,
  };
}

const count = (of: number): string => (of === 0 ? '' : String(of));
const joined = (texts: readonly string[]): string => texts.join('; ');
