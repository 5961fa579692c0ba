import { foodSchema, type Food, type Values, type YieldObservation } from '#lib/foods/food';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { SHARED_CREATOR_ID } from '#lib/store/creators';
import { folded } from '#lib/store/fold';
import { foodRows, type FoodRows } from '#lib/store/food-rows';
import { foodFrom } from '#lib/store/from-rows';
import type { ImportIds } from '#lib/store/import-ids';
import { ALIVE, foodInclude } from '#lib/store/load';
import { dataText } from '#lib/store/same-data';

/**
 * The edits that bring a file's foods in, and in `ids` what each became. A reference food is the stored one
 * of the same table and number if it states the same values; an own food is reused if everything that it
 * states is equal. All others are added as new.
 */
export async function importFoods(
  foods: readonly Food[],
  at: Date,
  creatorId: string,
  ids: ImportIds,
): Promise<Edit[]> {
  const edits: Edit[] = [];
  for (const food of witnessesFirst(foods)) {
    const path = `foods[${foods.indexOf(food)}]`;
    const witnessId =
      food.witnessId === null ? null : ids.of('food', food.witnessId, `${path}.witnessId`);
    const wanted = { ...food, witnessId, yields: food.yields.map((each) => ofLine(each, ids)) };
    const stored = await storedReference(wanted, creatorId);
    if (stored) {
      ids.use('food', food.id, stored.id);
      ids.use('version', food.version.id, stored.version.id);
      edits.push(...partsMissing(wanted, stored, at, ids));
      continue;
    }
    const own = await equalOwnFood(wanted, creatorId, ids);
    if (own) {
      ids.use('food', food.id, own.id);
      ids.use('version', food.version.id, own.version.id);
      edits.push(...cooksOfLines(wanted, own, at, own.yields.length, ids));
      continue;
    }
    edits.push(...newFood(wanted, ids.mint('food', food.id), at, ids));
  }
  return edits;
}

/** A cook of one of the file's ingredients is one of the row that the ingredient becomes; of another, of none. */
function ofLine(observed: YieldObservation, ids: ImportIds): YieldObservation {
  const { own } = observed;
  if (own === null || own.lineId === null) return observed;
  return { ...observed, own: { ...own, lineId: ids.known('line', own.lineId) ?? null } };
}

/** What a food of a file states is compared without the ingredients whose cooks its cooked weights were. */
const BESIDE = ['id', 'lineId'];

/** A food's cooked weights, each once: the same cook stands once for each time that a file was brought in. */
function cooks({ yields }: Food): readonly string[] {
  return [...new Set(yields.map((observed) => dataText(observed, BESIDE)))];
}

/** The cooks of the file's own ingredients: without them their figures would rest on past cooks. */
function cooksOfLines(food: Food, stored: Food, at: Date, after: number, ids: ImportIds): Edit[] {
  const yields = food.yields
    .filter(({ own }) => own !== null && own.lineId !== null)
    .filter(({ id }) => !(ids.keep && stored.yields.some((there) => there.id === id)))
    .map((observed) => ({ ...observed, id: ids.fresh(observed.id) }));
  const rows = foodRows({ ...stored, measures: [], yields, allergens: [] }, at);
  return partEdits(rows, { measures: 0, yields: after, allergens: 0 });
}

/** A food that is a witness comes before those it witnesses; a ring of witnesses keeps the file's order. */
function witnessesFirst(foods: readonly Food[]): Food[] {
  const byId = new Map(foods.map((food) => [food.id, food]));
  const sorted = new Set<Food>();
  const visit = (food: Food, above: readonly Food[]) => {
    if (above.includes(food)) return;
    const witness = food.witnessId === null ? undefined : byId.get(food.witnessId);
    if (witness) visit(witness, [...above, food]);
    sorted.add(food);
  };
  for (const food of foods) visit(food, []);
  return [...sorted];
}

/** Values with only the cells that are stated: a cell that says "missing" says what an absent one does. */
function stated(values: Values): Values {
  return Object.fromEntries(Object.entries(values).filter(([, cell]) => cell.kind !== 'missing'));
}

function versionText({ version }: Food): string {
  return dataText({ ...version, values: stated(version.values) }, ['id', 'seq']);
}

async function storedReference(food: Food, creatorId: string): Promise<Food | null> {
  if (food.kind !== 'reference') return null;
  const { source, release, sourceNo } = food.version;
  const version = await database().foodVersion.findFirst({
    where: { ...ALIVE, creatorId: SHARED_CREATOR_ID, source, release, sourceNo },
    orderBy: { seq: 'desc' },
    include: { food: { include: foodInclude(creatorId) } },
  });
  if (!version) return null;
  const stored = foodSchema.parse(foodFrom(version.food));
  const same =
    stored.name === food.name &&
    stored.section === food.section &&
    stored.witnessId === food.witnessId &&
    versionText(stored) === versionText(food);
  return same ? stored : null;
}

/** Measures, yields and allergen facts that the file adds to a food of a table: the creator's own. */
function partsMissing(food: Food, stored: Food, at: Date, ids: ImportIds): Edit[] {
  const lacking = <T extends { id: string }>(wanted: readonly T[], there: readonly T[]): T[] => {
    const known = new Set(there.map((part) => dataText(part, BESIDE)));
    return wanted
      .filter((part) => !known.has(dataText(part, BESIDE)))
      .map((part) => ({ ...part, id: ids.fresh(part.id) }));
  };
  const cooked = food.yields.filter(({ own }) => own === null || own.lineId === null);
  const rows = foodRows(
    {
      ...stored,
      measures: lacking(food.measures, stored.measures),
      yields: lacking(cooked, stored.yields),
      allergens: lacking(food.allergens, stored.allergens),
    },
    at,
  );
  const after = {
    measures: stored.measures.length,
    yields: stored.yields.length,
    allergens: stored.allergens.length,
  };
  const yields = stored.yields.length + rows.YieldObservation.length;
  return [...partEdits(rows, after), ...cooksOfLines(food, stored, at, yields, ids)];
}

async function equalOwnFood(food: Food, creatorId: string, ids: ImportIds): Promise<Food | null> {
  const candidates = await database().food.findMany({
    where: { ...ALIVE, creatorId, mergedIntoId: null, nameFolded: folded(food.name) },
    orderBy: { id: 'asc' },
    include: foodInclude(creatorId),
  });
  const text = (of: Food) =>
    dataText({ ...of, version: null, yields: cooks(of) }, BESIDE) +
    versionText(of) +
    String(of.witnessId);
  const wanted = text(food);
  for (const candidate of candidates) {
    if (!ids.mayUse(food.id, candidate.id)) continue;
    const stored = foodSchema.parse(foodFrom(candidate));
    if (text(stored) === wanted) return stored;
  }
  return null;
}

function newFood(food: Food, id: string, at: Date, ids: ImportIds): Edit[] {
  const fresh = <T extends { id: string }>(parts: readonly T[]): T[] =>
    parts.map((part) => ({ ...part, id: ids.fresh(part.id) }));
  const rows = foodRows(
    {
      ...food,
      id,
      version: { ...food.version, id: ids.mint('version', food.version.id) },
      measures: fresh(food.measures),
      yields: fresh(food.yields),
      allergens: fresh(food.allergens),
    },
    at,
  );
  return [
    { op: 'create', entity: 'Food', row: rows.Food },
    { op: 'create', entity: 'FoodVersion', row: rows.FoodVersion },
    ...partEdits(rows, { measures: 0, yields: 0, allergens: 0 }),
  ];
}

/** The parts of a food as edits, placed after those that are there. */
function partEdits(
  rows: FoodRows,
  after: { readonly measures: number; readonly yields: number; readonly allergens: number },
): Edit[] {
  const placed = <T extends { position: number }>(part: readonly T[], from: number): T[] =>
    part.map((row) => ({ ...row, position: row.position + from }));
  return [
    ...placed(rows.FoodMeasure, after.measures).map(
      (row) => ({ op: 'create', entity: 'FoodMeasure', row }) as const,
    ),
    ...placed(rows.YieldObservation, after.yields).map(
      (row) => ({ op: 'create', entity: 'YieldObservation', row }) as const,
    ),
    ...placed(rows.AllergenFact, after.allergens).map(
      (row) => ({ op: 'create', entity: 'AllergenFact', row }) as const,
    ),
  ];
}
