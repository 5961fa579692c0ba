import { filmedTogether, type DayFile } from '#lib/episode/also-filmed';
import type { Shot, Step } from '#lib/episode/step-schema';
import { rowKey, rowRefOf, type OrderedHeat, type RowRef } from '#lib/shoot/day-log';
import type { DaySheet } from '#lib/shoot/day-sheet';
import { clockText } from '#lib/shoot/day-words';
import type { DayFold } from '#lib/shoot/fold-day';
import { leastInside, leastWords, type LeastInside } from '#lib/shoot/inside-least';
import type { OrderRow } from '#lib/shoot/now-and-next';
import type { PlanEntry } from '#lib/shoot/plan';
import { placedPickups } from '#lib/shoot/placed-pickups';
import { inTakenOrder } from '#lib/shoot/replan-order';
import { placeWords } from '#lib/shoot/step-words';
import { edgeOf, rowFacts } from '../_components/row-facts';

export type LiveShot = Pick<Shot, 'id' | 'title' | 'framing' | 'stepId'>;

/** A row of the shooting order with its words, as it goes to the device that shows it. */
export interface LiveRow extends OrderRow {
  readonly ref: RowRef;
  readonly key: string;
  readonly title: string;
  readonly segmentId: string | null;
  readonly segmentTitle: string | null;
  /** Planned start and end. */
  readonly from: string;
  readonly to: string;
  readonly place: string;
  readonly facts: readonly string[];
  readonly remarks: readonly string[];
  /** The classes of its edge. */
  readonly edge: string;
  readonly role: Step['role'] | null;
  /** The shots of the whole segment. */
  readonly shots: readonly LiveShot[];
  readonly inside: (LeastInside & { readonly words: string }) | null;
}

/** The rows of a day sheet, in its order. */
export function liveRows(sheet: DaySheet, given: DayFile): LiveRow[] {
  const file = filmedTogether(given);
  const { region, segments } = file.episode;
  return sheet.rows.map((row) => {
    const { id, kind, stepId, startMin, endMin, hands, ovenId, title, segmentId } = row.entry;
    const ref = rowRefOf(row.entry);
    const segment = segments.find((each) => each.id === segmentId);
    const step = segment?.steps.find((each) => each.id === stepId);
    const least = segment && step ? leastInside(file, segment, step) : null;
    return {
      entry: { id, kind, stepId, startMin, endMin, hands, ovenId },
      ref,
      key: rowKey(ref),
      title,
      segmentId,
      segmentTitle: kind === 'step' ? row.segmentTitle : null,
      from: clockText(startMin),
      to: clockText(endMin),
      place: placeWords(row.entry, file.kitchen.ovens, region, row.appliance),
      // What is to be got and read has a place of its own here.
      facts: rowFacts({ ...row, shots: [], inside: null }, region),
      remarks: row.remarks,
      edge: edgeOf(row),
      role: step?.role ?? null,
      shots: (segment?.shots ?? []).map((shot) => ({
        id: shot.id,
        title: shot.title,
        framing: shot.framing,
        stepId: shot.stepId,
      })),
      inside: least && { ...least, words: leastWords(least, region) },
    };
  });
}

/** The rows in the order that was taken last on the day, with the pickups that it has placed. */
export function rowsInOrder(
  planned: readonly LiveRow[],
  { order, pickups }: Pick<DayFold, 'order' | 'pickups'>,
): LiveRow[] {
  if (order === null) return [...planned];
  const rows = [...planned, ...placedPickups({ order, pickups }).map(pickupRow)];
  const byId = new Map(rows.map((row) => [row.entry.id, row]));
  const heats = new Map(order.heats.map((heat) => [heat.id, heat]));
  const entries = inTakenOrder(
    rows.map(({ entry }) => entry),
    order,
    ({ id, kind, startMin, endMin, ovenId }): LiveRow['entry'] => {
      return { id, kind, startMin, endMin, ovenId, stepId: null, hands: false };
    },
  );
  return entries.flatMap((entry): LiveRow[] => {
    const heat = heats.get(entry.id);
    const row = heat ? heatRow(heat) : byId.get(entry.id);
    if (row === undefined) return [];
    return [{ ...row, entry, from: clockText(entry.startMin), to: clockText(entry.endMin) }];
  });
}

function pickupRow(entry: PlanEntry): LiveRow {
  const { id, kind, stepId, startMin, endMin, hands, ovenId, title } = entry;
  const ref = rowRefOf(entry);
  return {
    entry: { id, kind, stepId, startMin, endMin, hands, ovenId },
    ref,
    key: rowKey(ref),
    title,
    segmentId: null,
    segmentTitle: 'To get later',
    from: clockText(startMin),
    to: clockText(endMin),
    place: 'hands + camera',
    facts: [],
    remarks: [],
    edge: 'border-l-[6px] border-l-hand',
    role: null,
    shots: [],
    inside: null,
  };
}

function heatRow({ id, kind, title, startMin, endMin, ovenId }: OrderedHeat): LiveRow {
  const ref = { entryId: id };
  return {
    entry: { id, kind, startMin, endMin, ovenId, stepId: null, hands: false },
    ref,
    key: rowKey(ref),
    title,
    segmentId: null,
    segmentTitle: null,
    from: clockText(startMin),
    to: clockText(endMin),
    place: 'by itself',
    facts: [],
    remarks: [],
    edge: 'border-l-[6px] border-double border-l-self',
    role: null,
    shots: [],
    inside: null,
  };
}
