import 'server-only';
import { database } from '#lib/store/client';
import type { Span } from '#lib/shoot/step-words';

/** A stretch of a perishable lot as its row: the plain data names none. */
export interface SpanRow extends Span {
  readonly id: string;
  readonly rev: number;
  readonly perishableId: string;
}

const ALIVE = { deletedAt: null } as const;
const ORDER = [{ position: 'asc' as const }, { id: 'asc' as const }];

/** The stretches of all lots of an episode, in their order. */
export async function readSpans(episodeId: string): Promise<readonly SpanRow[]> {
  const rows = await database().perishableSpan.findMany({
    where: { ...ALIVE, perishable: { ...ALIVE, segment: { ...ALIVE, episodeId } } },
    orderBy: ORDER,
  });
  return rows.map(({ id, rev, perishableId, fromStepId, fromAnchor, toStepId, toAnchor }) => ({
    id,
    rev,
    perishableId,
    fromStepId,
    fromAnchor: anchorOf(fromAnchor),
    toStepId,
    toAnchor: anchorOf(toAnchor),
  }));
}

function anchorOf(text: string): Span['fromAnchor'] {
  if (text === 'start' || text === 'end') return text;
  throw new Error(`"${text}" is no end of a step`);
}

/** A row as an edit names it. */
export interface RowAt {
  readonly id: string;
  readonly rev: number;
}

/** What names a step: its ties, stretches and pins of any day, and the shots got during it. */
export interface Tied {
  readonly links: readonly RowAt[];
  readonly spans: readonly RowAt[];
  readonly pins: readonly RowAt[];
  readonly shots: readonly RowAt[];
}

/** The rows that would lead to nothing without the step. */
export async function readTied(stepId: string): Promise<Tied> {
  const select = { id: true, rev: true } as const;
  const eitherEnd = { ...ALIVE, OR: [{ fromStepId: stepId }, { toStepId: stepId }] };
  const named = { ...ALIVE, stepId };
  const db = database();
  return {
    links: await db.stepLink.findMany({ where: eitherEnd, select }),
    spans: await db.perishableSpan.findMany({ where: eitherEnd, select }),
    pins: await db.pin.findMany({ where: named, select }),
    shots: await db.shot.findMany({ where: named, select }),
  };
}

/** The place after the last lot of a segment, stretch of a lot, appointment or pin of a day; removed ones included. */
export async function placeAfter(
  entity: 'Perishable' | 'PerishableSpan' | 'Appointment' | 'Pin',
  parentId: string,
): Promise<number> {
  const db = database();
  const last = { orderBy: { position: 'desc' as const }, select: { position: true } };
  const find = {
    Perishable: () => db.perishable.findFirst({ where: { segmentId: parentId }, ...last }),
    PerishableSpan: () =>
      db.perishableSpan.findFirst({ where: { perishableId: parentId }, ...last }),
    Appointment: () => db.appointment.findFirst({ where: { dayId: parentId }, ...last }),
    Pin: () => db.pin.findFirst({ where: { dayId: parentId }, ...last }),
  };
  const found = await find[entity]();
  return found === null ? 0 : found.position + 1;
}

/** The last step of a segment as it is written, which a new one follows; null where there is none. */
export async function readLastStep(segmentId: string): Promise<string | null> {
  const last = await database().step.findFirst({
    where: { ...ALIVE, segmentId },
    orderBy: [{ position: 'desc' }, { id: 'desc' }],
    select: { id: true },
  });
  return last?.id ?? null;
}

/** The pins of a day's steps of some segments. */
export async function readPinsOnDay(
  dayId: string,
  segmentIds: readonly string[],
): Promise<readonly RowAt[]> {
  const step = { segmentId: { in: [...segmentIds] } };
  return database().pin.findMany({
    where: { ...ALIVE, dayId, step },
    orderBy: { id: 'asc' },
    select: { id: true, rev: true },
  });
}
