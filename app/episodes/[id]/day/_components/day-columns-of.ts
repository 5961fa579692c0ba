import type { BlockTone, DayBlock, DayColumn } from '../../../../_ui/day-columns';
import type { Episode } from '#lib/episode/schema';
import { HANDS_COLUMN, type DaySheet, type DaySheetBlock } from '#lib/shoot/day-sheet';
import { clockText, degreesText } from '#lib/shoot/day-words';
import type { PlanEntry } from '#lib/shoot/plan';

/** The sheet's columns as they are drawn: the hands, each oven, and what runs by itself. Empty ones are left out. */
export function dayColumnsOf(sheet: DaySheet, region: Episode['region']): DayColumn[] {
  const entries = new Map(sheet.rows.map(({ entry }) => [entry.id, entry]));
  return sheet.columns
    .map(({ id, title }) => ({
      id,
      name: title,
      blocks: sheet.blocks
        .filter(({ columnId }) => columnId === id)
        .map((block) => drawn(block, entries.get(block.entryId), region)),
    }))
    .filter(({ id, blocks }) => id === HANDS_COLUMN || blocks.length > 0);
}

function drawn(
  block: DaySheetBlock,
  entry: PlanEntry | undefined,
  region: Episode['region'],
): DayBlock {
  const inOven = entry?.ovenId === block.columnId && block.kind === 'step';
  const milliC = inOven ? (entry?.milliC ?? null) : null;
  return {
    id: `${block.columnId} ${block.entryId}`,
    startMin: block.startMin,
    endMin: block.endMin,
    start: clockText(block.startMin),
    end: clockText(block.endMin),
    title: block.title,
    tone: toneOf(block),
    href: `#${entryElement(block.entryId)}`,
    ...(entry?.stepId && { stepId: entry.stepId }),
    ...(milliC !== null && { detail: degreesText(milliC, region) }),
  };
}

/** Red for what needs the hands, teal for what runs by itself, dashed for heating, cooling, washing up. */
export function toneOf({ kind, columnId }: Pick<DaySheetBlock, 'kind' | 'columnId'>): BlockTone {
  if (kind === 'preheat' || kind === 'coolDown' || kind === 'washUp') return 'pause';
  return columnId === HANDS_COLUMN ? 'hand' : 'self';
}

/** The element of an entry that links lead to. */
export function entryElement(entryId: string): string {
  return `entry-${entryId.replaceAll(':', '-')}`;
}
