import 'server-only';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { listEventSchema } from '#lib/shopping/list-event-schema';
import { LIST_WORDS, readScope, type ListEvent, type ListScope } from '#lib/shopping/list-events';
import { lotsOf } from '#lib/shopping/put-away';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';
import { problemAt } from '#lib/store/refusals';
import { write } from '#lib/store/write';

/** What became of each entry that was sent, by its id. */
export interface KeptListEvents {
  readonly kept: readonly string[];
  /** Sent again: it was kept before. */
  readonly already: readonly string[];
  readonly refused: readonly { readonly id: string; readonly problem: Problem }[];
}

/** Requests with the same entries that may race, each of which makes one attempt void. */
const ATTEMPTS = 8;
const RACED: ReadonlySet<string> = new Set(['exists-already', 'conflict']);

/**
 * Keeps what devices entered on a shopping list, through the funnel, each entry as an act of its own. What was put away
 * becomes lots in the same act, both or neither.
 *
 * Law: each entry arrives once and its goods become lots once, however often and by however many it is sent.
 */
export async function keepListEvents(
  scope: ListScope,
  events: readonly ListEvent[],
  at: Date,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<KeptListEvents> {
  const kept: string[] = [];
  const already: string[] = [];
  const refused: { id: string; problem: Problem }[] = [];
  for (const event of events) {
    const done = await keepOne(scope, event, at, creatorId);
    if (!done.ok) {
      const [problem] = done.problems;
      if (problem) refused.push({ id: event.id, problem });
    } else (done.value === 'kept' ? kept : already).push(event.id);
  }
  return { kept, already: already.filter((id) => !kept.includes(id)), refused };
}

async function keepOne(
  scope: ListScope,
  event: ListEvent,
  at: Date,
  creatorId: string,
): Promise<Result<'kept' | 'already'>> {
  const { id, deviceId, deviceSeq, foodId } = event;
  if (event.scope !== scope) return refusal('scope', 'This entry is of another list.');
  for (let attempt = 1; ; attempt++) {
    const there = await database().tick.findMany({
      where: { OR: [{ id }, { deviceId, deviceSeq }] },
      select: { id: true, scope: true, deviceId: true, deviceSeq: true, creatorId: true },
    });
    const same = there.find((row) => row.id === id);
    if (same) {
      const equal = same.deviceId === deviceId && same.deviceSeq === deviceSeq;
      return equal && same.scope === scope && same.creatorId === creatorId
        ? ok('already')
        : refusal('id-taken', 'This entry has the id of another that was kept before.');
    }
    if (there.length > 0) {
      return refusal('number-taken', `Another entry of this device has the number ${deviceSeq}.`);
    }
    const more = await putAwayEdits(event, at, creatorId);
    if (!more.ok) return more;
    const { payload, kind } = event;
    const of = readScope(scope);
    const row = {
      ...{ id, scope, deviceId, deviceSeq, kind, foodId },
      episodeId: of && 'episodeId' in of ? of.episodeId : null,
      at: new Date(event.at),
      payload: JSON.parse(JSON.stringify(payload)) as Record<string, never>,
    };
    const tick: Edit = { op: 'create', entity: 'Tick', row };
    const label = `Shopping list: ${LIST_WORDS[kind]}`;
    const edits = [tick, ...more.value];
    const written = await write({ actor: creatorId, creatorId, label, at, edits });
    if (written.ok) return ok('kept');
    const raced = written.problems.every(({ code }) => RACED.has(code));
    if (!raced || attempt === ATTEMPTS) return written;
  }
}

/** The lots that what is put away becomes; none where they are there already, or it is no such entry. */
async function putAwayEdits(
  event: ListEvent,
  at: Date,
  creatorId: string,
): Promise<Result<readonly Edit[]>> {
  if (event.kind !== 'putAway') return ok([]);
  const { eventId } = event.payload;
  const row = await database().tick.findFirst({
    where: { ...ALIVE, creatorId, id: eventId, scope: event.scope, foodId: event.foodId },
  });
  if (!row) return refusal('gone', 'The entry by which this lay in the basket is not there.');
  const lots = lotsOf(listEventFrom(row));
  if (lots === 'amount-open') {
    return refusal(lots, 'Nobody said how much this is: add it to the pantry with its amount.');
  }
  if (lots === 'food-open') {
    return refusal(lots, 'Say first which food it is that was taken instead.');
  }
  const there = await database().stockLot.findMany({
    where: { id: { in: lots.map(({ lotId }) => lotId) } },
    select: { id: true },
  });
  if (there.length > 0) return ok([]);
  return ok(
    lots.flatMap(({ lotId, moveId, foodId, mg }): Edit[] => [
      {
        op: 'create',
        entity: 'StockLot',
        row: { id: lotId, foodId, place: '', openedOn: null, useBy: null },
      },
      {
        op: 'create',
        entity: 'StockMove',
        row: { id: moveId, lotId, kind: 'bought', deltaMg: mg, at, eventId: null },
      },
    ]),
  );
}

const refusal = (code: string, message: string): Result<never> =>
  failed(problemAt('events', code, message));

interface TickRow {
  readonly id: string;
  readonly scope: string;
  readonly deviceId: string;
  readonly deviceSeq: number;
  readonly at: Date;
  readonly kind: string;
  readonly foodId: string | null;
  readonly payload: unknown;
}

/** A row as the entry that it keeps. */
export function listEventFrom(row: TickRow): ListEvent {
  const { id, scope, deviceId, deviceSeq, at, kind, foodId, payload } = row;
  const event = { id, scope, deviceId, deviceSeq, at: at.toISOString(), kind, foodId, payload };
  return listEventSchema.parse(event);
}
