import type { Episode } from '#lib/episode/schema';
import { HANDS_COLUMN, type DaySheetRow } from '#lib/shoot/day-sheet';
import { degreesText } from '#lib/shoot/day-words';
import { toneOf } from './day-columns-of';

/** The edge of a row: red and wide for the hands, teal and double for what runs by itself. */
const EDGE = {
  hand: 'border-l-[6px] border-l-hand',
  self: 'border-l-[6px] border-double border-l-self',
  pause: 'border-l-[6px] border-dotted border-l-edge',
} as const;

/** The classes of a row's edge; readable in black and white too. */
export function edgeOf({ entry, columnIds }: DaySheetRow): string {
  const columnId = columnIds.includes(HANDS_COLUMN) ? HANDS_COLUMN : '';
  return EDGE[toneOf({ kind: entry.kind, columnId })];
}

/** What is said beside an entry: inside temperature, shots, the step's note. */
export function rowFacts(row: DaySheetRow, region: Episode['region']): string[] {
  const { inside, note, shots } = row;
  return [
    ...(inside ? [`inside ${degreesText(inside.milliC, region)}`] : []),
    ...shots.map((shot) => `shot: ${[shot.title, shot.framing].filter(Boolean).join(', ')}`),
    ...(note === '' ? [] : [note]),
  ];
}
