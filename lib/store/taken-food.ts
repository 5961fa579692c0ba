import 'server-only';
import { v7 as uuid } from 'uuid';
import { checkLabel } from '#lib/foods/check-label';
import type { Food, FoodVersion } from '#lib/foods/food';
import { isLabelled, shelfVersion } from '#lib/foods/shelf-label';
import { failed, ok, type Result } from '#lib/result';
import type { ListScope } from '#lib/shopping/list-events';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { foodRows } from '#lib/store/food-rows';
import { listEventFrom } from '#lib/store/list-events';
import { ALIVE } from '#lib/store/load';
import { photoEdit } from '#lib/store/photos-of-foods';
import { readLabelPhoto } from '#lib/store/photos-of-lists';
import { readFood } from '#lib/store/read-foods';
import { write } from '#lib/store/write';

const GONE = failed({ path: '', code: 'gone', message: 'This entry of the list is not there.' });
const EMPTY = { basis: 'per100g', servingMg: null, values: {} } as const;

/** How a shop's label reads: by whose rules, and on which local date. */
interface Reading {
  readonly region: 'US' | 'EU';
  readonly dateRead: string;
  readonly at: Date;
}

/**
 * Makes what was taken instead a food of the pantry: its name, the values of its label that were typed at the shelf, and
 * its photo to type the others from. It stands where the food stands that was not there. Its id follows from the
 * entry's, so that it is there once, however often this is asked.
 * @returns the food's id
 */
export async function makeTakenFood(
  scope: ListScope,
  eventId: string,
  { region, dateRead, at }: Reading,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<Result<string>> {
  const row = await database().tick.findFirst({
    where: { ...ALIVE, creatorId, id: eventId, scope, kind: 'instead' },
  });
  const event = row && listEventFrom(row);
  if (event?.kind !== 'instead') return GONE;
  const { name, label, takenFoodId, photoSha256 } = event.payload;
  if (takenFoodId !== null) return ok(takenFoodId);
  const id = `food-${event.id}`;
  if (await database().food.findFirst({ where: { id, creatorId } })) return ok(id);
  const missed = await readFood(event.foodId);
  if (!missed) return GONE;
  const version: FoodVersion = {
    id: uuid(),
    seq: 1,
    ...shelfVersion(label ?? EMPTY, region),
    state: missed.version.state,
    factors: null,
    refuse: null,
    source: 'package label',
    release: '',
    sourceNo: '',
    dateRead,
    kept: [],
  };
  const checked = label && isLabelled(label) ? soundLabel(version) : ok(version);
  if (!checked.ok) return checked;
  const food: Food = {
    ...{ id, kind: 'label', name, section: missed.section, witnessId: null },
    ...{ version: checked.value, measures: [], yields: [], allergens: [] },
  };
  const rows = foodRows(food, at);
  const edits: Edit[] = [
    { op: 'create', entity: 'Food', row: rows.Food },
    { op: 'create', entity: 'FoodVersion', row: rows.FoodVersion },
    ...(await photoEdits(scope, photoSha256, version.id, creatorId)),
  ];
  const written = await write({ actor: creatorId, creatorId, label: `Add ${name}`, at, edits });
  return written.ok ? ok(id) : written;
}

/** A label by the region's rule, or as printed where that rule prints no such digits; what cannot be at all is told. */
function soundLabel(version: FoodVersion): Result<FoodVersion> {
  if (checkLabel(version).length === 0) return ok(version);
  const printed: FoodVersion = { ...version, rule: 'asPrinted' };
  const faults = checkLabel(printed);
  return faults.length === 0 ? ok(printed) : failed(...faults);
}

async function photoEdits(
  scope: ListScope,
  sha256: string | null,
  versionId: string,
  creatorId: string,
): Promise<Edit[]> {
  const photo = sha256 === null ? null : await readLabelPhoto(scope, sha256, creatorId);
  if (!photo) return [];
  const edit = await photoEdit(versionId, photo, 'label', creatorId);
  return edit.ok && edit.value ? [edit.value] : [];
}
