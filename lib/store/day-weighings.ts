import 'server-only';
import { v7 as uuid } from 'uuid';
import { failed, ok, type Result } from '#lib/result';
import type { DayEvent, StruckOutEvent, WeighedEvent } from '#lib/shoot/day-log';
import { readingId, weighingOf } from '#lib/shoot/day-weighings';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { stockEdits } from '#lib/store/day-stock';
import { ALIVE } from '#lib/store/load';
import { removalEdits } from '#lib/store/remove-rows';

/** What an entry changes beside the log of the day, and what the journal calls that; null for nothing to say. */
export interface ScaleEdits {
  readonly label: string | null;
  readonly edits: readonly Edit[];
}

/** Whether an entry changes readings of a dish. */
export function changesADish(event: DayEvent): event is WeighedEvent | StruckOutEvent {
  return event.kind === 'weighed' || event.kind === 'struckOut';
}

/**
 * The edits by which an entry at the scale reaches its dish: a reading whose id follows from the entry's, so that it
 * is there once, or the striking out of one. They are written with the entry, both or neither.
 *
 * @returns a problem where the dish, the ingredient, the scale or the first reading is no longer there: the entry
 * is then not kept, and stays with who made it
 */
export async function scaleEdits(
  dayId: string,
  event: DayEvent,
  creatorId: string,
): Promise<Result<ScaleEdits>> {
  if (event.kind === 'struckOut') return struckOutEdits(event, creatorId);
  if (event.kind !== 'weighed') return ok({ label: null, edits: [] });
  const { payload } = event;
  const { recipeId, lineId, scaleId, answersId, afterId, of } = payload;
  const mine = { ...ALIVE, creatorId };
  const db = database();
  const [recipe, line, scale, taken, first, before] = await Promise.all([
    db.recipe.findFirst({ where: { ...mine, id: recipeId, segments: onDay(dayId, creatorId) } }),
    lineId === null ? null : db.recipeLine.findFirst({ where: { ...mine, id: lineId, recipeId } }),
    db.scale.findFirst({ where: { ...mine, id: scaleId } }),
    db.weighing.findUnique({ where: { id: readingId(event.id) } }),
    answersId === null
      ? null
      : db.weighing.findFirst({ where: { ...mine, id: answersId, recipeId, kind: 'container' } }),
    afterId === null ? null : db.weighing.findFirst({ where: { ...mine, id: afterId, recipeId } }),
  ]);
  if (taken !== null)
    return refused('id-taken', 'A reading with the id of this one is there already.');
  if (recipe === null) return gone('This dish');
  if (lineId !== null && line === null) return gone('This ingredient');
  if (scale === null) return gone('The scale that it was read on');
  if (answersId !== null && first === null) return gone('The first reading of it');
  const { shares, ...row } = weighingOf(event.id, event.at, payload);
  return ok({
    label: labelOf(of, line?.text ?? recipe.title),
    edits: [
      {
        op: 'create',
        entity: 'Weighing',
        // A reading below it that was struck out since still said what came off.
        row: { ...row, recipeId, at: new Date(row.at), afterId: before === null ? null : afterId },
      },
      ...shares.map((share, position): Edit => ({
        op: 'create',
        entity: 'WeighingShare',
        row: { id: uuid(), weighingId: row.id, lineId: share.lineId, position, ...share.share },
      })),
      ...(first === null ? [] : await removalEdits('Weighing', first.id, first.rev)),
      ...(await stockEdits(dayId, event, creatorId)),
      ...(of === 'left' && line !== null && line.leftKind !== 'weighed' ? [leftWeighed(line)] : []),
    ],
  });
}

/** Dishes of an episode that is filmed on the day. */
function onDay(dayId: string, creatorId: string) {
  const mine = { ...ALIVE, creatorId };
  return { some: { ...mine, episode: { ...mine, days: { some: { ...mine, dayId } } } } };
}

async function struckOutEdits(
  { payload: { weighingId } }: StruckOutEvent,
  creatorId: string,
): Promise<Result<ScaleEdits>> {
  const reading = await database().weighing.findFirst({
    where: { ...ALIVE, creatorId, id: weighingId },
  });
  // A photo of a display is no reading, and one that was taken out elsewhere is out.
  if (reading === null) return ok({ label: null, edits: [] });
  const edits = await removalEdits('Weighing', reading.id, reading.rev);
  return ok({ label: 'Take a reading back', edits });
}

/** Says of an ingredient that what is left of it is weighed; where it is left stays open to be said better. */
function leftWeighed({ id, rev }: { readonly id: string; readonly rev: number }): Edit {
  return {
    op: 'update',
    entity: 'RecipeLine',
    id,
    rev,
    patch: {
      leftKind: 'weighed',
      leftLowMg: null,
      leftMg: null,
      leftHighMg: null,
      leftWhere: 'pan',
      leftMade: 'alike',
    },
  };
}

function labelOf(of: WeighedEvent['payload']['of'], what: string): string {
  if (of === 'container') return `Weigh the container of ${what}`;
  if (of === 'finished') return 'Weigh the finished dish';
  if (of === 'cooked') return `Weigh ${what}, cooked`;
  return of === 'left' ? `Weigh what is left of ${what}` : `Weigh ${what}`;
}

const gone = (what: string): Result<never> =>
  refused('gone', `${what} is no longer there: it was removed.`);

function refused(code: string, message: string): Result<never> {
  return failed({ path: '', code, message });
}
