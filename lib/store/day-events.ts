import 'server-only';
import type { z } from 'zod';
import { ok, type Problem } from '#lib/result';
import type { DayEvent } from '#lib/shoot/day-log';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { changesADish, scaleEdits } from '#lib/store/day-weighings';
import { ALIVE } from '#lib/store/load';
import { problemAt } from '#lib/store/refusals';
import { inLine } from '#lib/store/in-line';
import type { jsonObject } from '#lib/store/rows-basic';
import { write } from '#lib/store/write';

/** What became of each event that was sent, by its id. Each id stands in one of the first three. */
export interface KeptEvents {
  readonly kept: readonly string[];
  /** Sent again: it was kept before. */
  readonly already: readonly string[];
  readonly refused: readonly RefusedEvent[];
  /** Of those kept, the ones about a step that the program does not have (any more). */
  readonly unknownSteps: readonly string[];
}

export interface RefusedEvent {
  readonly id: string;
  readonly problem: Problem;
}

/** Requests with the same events that may race, each of which makes one attempt void. */
const ATTEMPTS = 8;

/**
 * Keeps what devices entered on a filming day, through the funnel, in the order given. An event that is
 * there already is told so; one that takes another's id or number is refused, and the rest is kept.
 *
 * Law: each event arrives once, however often it is sent and whatever is sent at the same time.
 */
export async function keepDayEvents(
  dayId: string,
  events: readonly DayEvent[],
  at: Date,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<KeptEvents> {
  const day = { ...ALIVE, id: dayId, creatorId };
  if ((await database().filmingDay.findFirst({ where: day })) === null) {
    return { kept: [], already: [], refused: events.map(goneDay), unknownSteps: [] };
  }
  const kept = new Set<string>();
  const turnedDown = new Map<string, Problem>();
  for (let attempt = 1; ; attempt++) {
    const { fresh, already, refused } = await sorted(dayId, events);
    const open = fresh.filter(({ id }) => !turnedDown.has(id));
    const raced = await keepInTurn(open, { dayId, at, creatorId, kept, turnedDown });
    if (raced === null) {
      return {
        kept: [...kept],
        already: already.filter((id) => !kept.has(id)),
        refused: [...refused, ...[...turnedDown].map(([id, problem]) => ({ id, problem }))],
        unknownSteps: await withoutStep(events.filter(({ id }) => kept.has(id))),
      };
    }
    if (attempt === ATTEMPTS) throw new Error(`Day events were refused: ${JSON.stringify(raced)}`);
  }
}

interface Keeping {
  readonly dayId: string;
  readonly at: Date;
  readonly creatorId: string;
  readonly kept: Set<string>;
  readonly turnedDown: Map<string, Problem>;
}

/**
 * Writes events in their order, those that change a dish each as an act of its own. Null when all are settled; else
 * the problems of a write that another was in the way of.
 */
async function keepInTurn(
  events: readonly DayEvent[],
  keeping: Keeping,
): Promise<readonly Problem[] | null> {
  const { creatorId } = keeping;
  for (const batch of batchesOf(events)) {
    // What is in stock is looked at before it is written: two phones must not take the same gram.
    const problems = await inLine(`stock ${creatorId}`, () => keepBatch(batch, keeping));
    if (problems !== null) return problems;
  }
  return null;
}

/** Writes a batch; null when that is settled, else the problems of a write that another was in the way of. */
async function keepBatch(
  batch: readonly DayEvent[],
  { dayId, at, creatorId, kept, turnedDown }: Keeping,
): Promise<readonly Problem[] | null> {
  const [first] = batch;
  const scale = batch.length === 1 && first ? await scaleEdits(dayId, first, creatorId) : NO_EDITS;
  if (!scale.ok) {
    if (first && scale.problems[0]) turnedDown.set(first.id, scale.problems[0]);
    return null;
  }
  const written = await write({
    actor: creatorId,
    creatorId,
    label: scale.value.label ?? labelOf(batch),
    at,
    edits: [
      ...batch.map((event): Edit => ({
        op: 'create',
        entity: 'DayEvent',
        row: { ...event, dayId, at: new Date(event.at), ...plainJson(event) },
      })),
      ...scale.value.edits,
    ],
  });
  if (!written.ok) {
    const { problems } = written;
    if (problems.every(({ code }) => RACED.has(code))) return problems;
    throw new Error(`Day events were refused: ${JSON.stringify(problems)}`);
  }
  for (const { id } of batch) kept.add(id);
  return null;
}

const NO_EDITS = ok({ label: null, edits: [] });

/** What a write says that another was in the way of: looked at once more, all is told. */
const RACED: ReadonlySet<string> = new Set(['exists-already', 'conflict', 'gone']);

function batchesOf(events: readonly DayEvent[]): DayEvent[][] {
  const batches: DayEvent[][] = [];
  let open: DayEvent[] | null = null;
  for (const event of events) {
    if (changesADish(event)) {
      batches.push([event]);
      open = null;
    } else if (open) open.push(event);
    else batches.push((open = [event]));
  }
  return batches;
}

/** Parts what was sent into new, there already, and refused; removed ones are there too. */
async function sorted(dayId: string, events: readonly DayEvent[]) {
  const rows = await database().dayEvent.findMany({
    where: {
      OR: [
        { id: { in: events.map(({ id }) => id) } },
        {
          deviceId: { in: [...new Set(events.map(({ deviceId }) => deviceId))] },
          deviceSeq: { in: events.map(({ deviceSeq }) => deviceSeq) },
        },
      ],
    },
    select: { id: true, dayId: true, deviceId: true, deviceSeq: true },
  });
  const byId = new Map<string, Placed>(rows.map((row) => [row.id, row]));
  const byNumber = new Map<string, string>(rows.map((row) => [numberOf(row), row.id]));
  const fresh: DayEvent[] = [];
  const already = new Set<string>();
  const refused = new Map<string, Problem>();
  for (const [index, event] of events.entries()) {
    const { id } = event;
    const path = `events[${index}]`;
    const there = byId.get(id);
    const holder = byNumber.get(numberOf(event));
    if (there && there.dayId === dayId && numberOf(there) === numberOf(event)) {
      if (!fresh.some((other) => other.id === id)) already.add(id);
    } else if (there) {
      const words = 'This entry has the id of another that was kept before.';
      if (!fresh.some((other) => other.id === id)) {
        refused.set(id, problemAt(`${path}.id`, 'id-taken', words, { id }));
      }
    } else if (holder !== undefined) {
      const { deviceId, deviceSeq } = event;
      const words = `Another entry of this device already has the number ${deviceSeq}.`;
      const facts = { id, deviceId, deviceSeq, holder };
      refused.set(id, problemAt(`${path}.deviceSeq`, 'number-taken', words, facts));
    } else {
      fresh.push(event);
      byId.set(id, { ...event, dayId });
      byNumber.set(numberOf(event), id);
    }
  }
  return {
    fresh,
    already: [...already],
    refused: [...refused]
      .filter(([id]) => !already.has(id))
      .map(([id, problem]) => ({ id, problem })),
  };
}

type Placed = Pick<DayEvent, 'id' | 'deviceId' | 'deviceSeq'> & { readonly dayId: string };

function numberOf({ deviceId, deviceSeq }: Pick<DayEvent, 'deviceId' | 'deviceSeq'>): string {
  return `${deviceSeq} ${deviceId}`;
}

function goneDay({ id }: DayEvent): RefusedEvent {
  return { id, problem: problemAt('dayId', 'gone', GONE_DAY, { id }) };
}

/** Said of a filming day that is not there. */
export const GONE_DAY = 'This filming day is no longer there.';

async function withoutStep(events: readonly DayEvent[]): Promise<string[]> {
  const stepOf = (event: DayEvent) => ('stepId' in event.refs ? event.refs.stepId : null);
  const asked = events.flatMap((event) => stepOf(event) ?? []);
  const steps = await database().step.findMany({
    where: { ...ALIVE, id: { in: asked } },
    select: { id: true },
  });
  const there = new Set(steps.map(({ id }) => id));
  return events.flatMap((event) => {
    const stepId = stepOf(event);
    return typeof stepId === 'string' && !there.has(stepId) ? [event.id] : [];
  });
}

/** What an event is about and what it says, as the table keeps them. */
function plainJson({ refs, payload }: DayEvent): Record<'refs' | 'payload', Json> {
  return JSON.parse(JSON.stringify({ refs, payload })) as Record<'refs' | 'payload', Json>;
}

type Json = z.infer<typeof jsonObject>;

/** In a person's words, for the journal and "undo". */
function labelOf(events: readonly DayEvent[]): string {
  const [only] = events;
  if (events.length !== 1 || only === undefined) return `${events.length} entries on the day`;
  const words: Readonly<Record<DayEvent['kind'], string>> = {
    started: 'Started on the day',
    done: 'Done on the day',
    skipped: 'Skipped on the day',
    redo: 'Made again on the day',
    takenBack: 'Not done after all',
    note: 'Note on the day',
    pickup: 'To get later',
    take: 'Take of a shot',
    without: 'A shot the day does without',
    temperature: 'Inside temperature read',
    longer: 'Takes longer on the day',
    replanned: 'Another order from now on',
    cameraClock: 'The clock seen by the camera',
    orderBack: 'The order before on the day',
    weighed: 'Weighed on the day',
    display: 'Photo of a scale’s display',
    struckOut: 'A reading struck out on the day',
    said: 'Said on the day',
    unsaid: 'Not said after all',
  };
  return words[only.kind];
}
