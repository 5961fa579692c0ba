import type { Oven } from '#lib/episode/schema';
import { clockText, degreesText } from '#lib/shoot/day-words';
import type { PlanEntry, ShootPlan } from '#lib/shoot/plan';
import type { BlockTone, DayBlock, DayColumn } from '../../../../_ui/day-columns';

/** The plan as columns: the hands, each oven, and what runs by itself. An entry may stand in two of them. */
export function dayColumnsOf(
  plan: Pick<ShootPlan, 'entries'>,
  ovens: readonly Pick<Oven, 'id' | 'name'>[],
  region: 'US' | 'EU',
  hrefOf: (entry: PlanEntry) => string,
): DayColumn[] {
  const { entries } = plan;
  const column = (id: string, name: string, inIt: (entry: PlanEntry) => boolean): DayColumn => ({
    id,
    name,
    blocks: entries.filter(inIt).map((entry) => block(entry, id, region, hrefOf)),
  });
  const columns = [
    column('hands', 'Hands', (entry) => entry.hands),
    ...ovens.map(({ id, name }) => column(id, name, (entry) => entry.ovenId === id)),
    column('alone', 'By itself', (entry) => !entry.hands && entry.ovenId === null),
  ];
  return columns.filter(({ id, blocks }) => id === 'hands' || blocks.length > 0);
}

function block(
  entry: PlanEntry,
  columnId: string,
  region: 'US' | 'EU',
  hrefOf: (entry: PlanEntry) => string,
): DayBlock {
  const detail =
    entry.milliC !== null && columnId !== 'hands' && entry.kind === 'step'
      ? degreesText(entry.milliC, region)
      : '';
  return {
    id: entry.id,
    startMin: entry.startMin,
    endMin: entry.endMin,
    start: clockText(entry.startMin),
    end: clockText(entry.endMin),
    title: entry.title,
    tone: toneOf(entry, columnId),
    href: hrefOf(entry),
    ...(detail && { detail }),
  };
}

/** Red for what needs the hands, teal for what runs by itself, dashed for heating, cooling, washing up. */
export function toneOf(entry: PlanEntry, columnId: string): BlockTone {
  if (entry.kind === 'preheat' || entry.kind === 'coolDown' || entry.kind === 'washUp') {
    return 'pause';
  }
  return entry.hands && columnId === 'hands' ? 'hand' : 'self';
}
