import type { Cell, Food, FoodMeasure, FoodVersion, Values } from '#lib/foods/food';
import { isFoodGroup, sectionOf, type FoodGroup } from '#lib/foods/food-groups';
import { guessState } from '#lib/foods/guess-state';
import { readGrams, readHouseholdWords } from '#lib/foods/household-weight';
import { NUTRIENT_NAMES } from '#lib/foods/nutrients';
import { proposeAllergens } from '#lib/foods/propose-allergens';
import { referenceFoodId, referencePartId } from '#lib/foods/reference-ids';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { parsePrinted } from '#lib/units/printed';

/** The two files of SR28 as text, already decoded from Latin-1. */
export interface Sr28Texts {
  /** `ABBREV.txt`: 53 fields a line; 46 nutrients per 100 g, two household weights, refuse. */
  readonly abbreviated: string;
  /** `FOOD_DES.txt`: 14 fields a line; names, group, refuse, nitrogen and energy factors. */
  readonly descriptions: string;
}

export const SR28_SOURCE = 'USDA';
export const SR28_RELEASE = 'SR28';
const MEASURE_SOURCE = 'USDA SR28, abbreviated file';

/** Fields 3 to 48 of ABBREV hold these nutrients, in this order. */
const COLUMNS = NUTRIENT_NAMES.slice(0, 46);
const ABBREV_FIELDS = 53;
const DESCRIPTION_FIELDS = 14;

/**
 * Reads USDA SR28 (public domain): every food of the two texts with all columns, in order of number.
 * Printed digits are kept ("0.0" is not "0.00"); a blank is absent from `values`, which means missing and
 * never zero. State, section and allergens are proposals by the rules of `guessState`, `sectionOf` and
 * `proposeAllergens`. Faults are told by file and line; with any fault nothing is returned.
 * Layout: USDA SR28 documentation (2015), "Abbreviated file" and "Food Description File".
 */
export function readSr28(texts: Sr28Texts): Result<Food[]> {
  const problems: Problem[] = [];
  const rows = new Map<string, { fields: readonly string[]; line: number }>();
  readLines(texts.abbreviated, ABBREV_FIELDS, 'ABBREV.txt', problems, (fields, line) => {
    rows.set(unquoted(fields, 0), { fields, line });
  });
  const cells = new Map<string, Cell>();
  const foods: Food[] = [];
  readLines(
    texts.descriptions,
    DESCRIPTION_FIELDS,
    'FOOD_DES.txt',
    problems,
    (description, line) => {
      const sourceNo = unquoted(description, 0);
      const group = unquoted(description, 1);
      const row = rows.get(sourceNo);
      if (!/^\d{5}$/.test(sourceNo) || !row || !isFoodGroup(group)) {
        problems.push({
          path: `FOOD_DES.txt[${line}]`,
          code: 'food-not-readable',
          message: `Line ${line} needs a number of five digits with a line in ABBREV.txt, and one of the 25 food groups.`,
          facts: { sourceNo, group, inAbbrev: row !== undefined },
        });
        return;
      }
      rows.delete(sourceNo);
      foods.push(readFood(sourceNo, group, description, row, cells, problems));
    },
  );
  for (const [sourceNo, { line }] of rows) {
    problems.push({
      path: `ABBREV.txt[${line}]`,
      code: 'food-without-name',
      message: `Food ${sourceNo} in ABBREV.txt has no line in FOOD_DES.txt.`,
      facts: { sourceNo },
    });
  }
  if (problems.length > 0) return failed(...problems);
  return ok(foods.sort((a, b) => (a.version.sourceNo < b.version.sourceNo ? -1 : 1)));
}

function readFood(
  sourceNo: string,
  group: FoodGroup,
  description: readonly string[],
  row: { readonly fields: readonly string[]; readonly line: number },
  cells: Map<string, Cell>,
  problems: Problem[],
): Food {
  const name = unquoted(description, 2);
  const values: Values = {};
  COLUMNS.forEach((nutrient, index) => {
    const text = row.fields[index + 2] ?? '';
    if (text === '') return;
    const cell = cells.get(text) ?? readCell(text);
    if (cell) {
      cells.set(text, cell);
      values[nutrient] = cell;
    } else {
      problems.push({
        path: `ABBREV.txt[${row.line}].${nutrient}`,
        code: 'not-a-number',
        message: `"${text}" is not a printed number for ${nutrient} of food ${sourceNo}.`,
        facts: { sourceNo, nutrient, text },
      });
    }
  });
  return {
    id: referenceFoodId(sourceNo),
    kind: 'reference',
    name,
    section: sectionOf(group, name),
    witnessId: null,
    version: {
      id: referencePartId('version', sourceNo, 0),
      seq: 1,
      basis: 'per100g',
      serving: null,
      values,
      secondColumn: null,
      carbBasis: 'total',
      state: guessState(group, name),
      factors: readFactors(description),
      refuse: readRefuse(description),
      rule: 'asPrinted',
      source: SR28_SOURCE,
      release: SR28_RELEASE,
      sourceNo,
      dateRead: null,
      kept: [],
    },
    measures: readMeasures(sourceNo, row.fields),
    yields: [],
    allergens: proposeAllergens(name, group).map((proposal, index) => ({
      id: referencePartId('allergen', sourceNo, index),
      allergen: proposal.allergen,
      standing: 'proposed',
      reason: proposal.reason,
    })),
  };
}

function readCell(text: string): Cell | null {
  const printed = parsePrinted(text);
  return printed && printed.mantissa >= 0 ? { kind: 'eq', ...printed } : null;
}

/** Fields 11 to 14 of FOOD_DES: nitrogen to protein, and kcal per gram of protein, fat, carbohydrate. */
function readFactors(description: readonly string[]): FoodVersion['factors'] {
  const [nitrogen, protein, fat, carbohydrate] = [10, 11, 12, 13].map((index) =>
    parsePrinted(description[index] ?? ''),
  );
  if (!nitrogen && !protein && !fat && !carbohydrate) return null;
  return {
    protein: protein ?? null,
    fat: fat ?? null,
    carbohydrate: carbohydrate ?? null,
    nitrogen: nitrogen ?? null,
  };
}

/** Fields 8 and 9 of FOOD_DES; a blank percent is unknown, "0" is nothing to throw away. */
function readRefuse(description: readonly string[]): FoodVersion['refuse'] {
  const percent = description[8] ?? '';
  if (percent === '') return null;
  return { percent: Number(percent), text: unquoted(description, 7), inValues: false };
}

/** Fields 49 to 52 of ABBREV; the one description without a weight is passed over. */
function readMeasures(sourceNo: string, fields: readonly string[]): FoodMeasure[] {
  const measures: FoodMeasure[] = [];
  for (const at of [48, 50]) {
    const grams = readGrams(fields[at] ?? '');
    const words = readHouseholdWords(unquoted(fields, at + 1));
    if (!grams || !words) continue;
    const id = referencePartId('measure', sourceNo, measures.length);
    measures.push({ id, ...words, ...grams, source: MEASURE_SOURCE });
  }
  return measures;
}

function unquoted(fields: readonly string[], index: number): string {
  return (fields[index] ?? '').replace(/^~|~$/g, '').trim();
}

function readLines(
  text: string,
  expected: number,
  file: string,
  problems: Problem[],
  take: (fields: readonly string[], line: number) => void,
): void {
  text.split('\n').forEach((raw, index) => {
    const line = raw.endsWith('\r') ? raw.slice(0, -1) : raw;
    if (line === '') return;
    const fields = line.split('^');
    if (fields.length === expected) {
      take(fields, index + 1);
      return;
    }
    problems.push({
      path: `${file}[${index + 1}]`,
      code: 'wrong-field-count',
      message: `Line ${index + 1} of ${file} has ${fields.length} fields, not ${expected}.`,
      facts: { found: fields.length, expected },
    });
  });
}

/**
 * The code of each food's group by its number, from `FOOD_DES.txt` alone; lines that cannot be read are
 * passed over, since `readSr28` tells them. `readSr28Groups(text).get('05062')` → `'0500'`.
 */
export function readSr28Groups(descriptions: string): Map<string, FoodGroup> {
  const groups = new Map<string, FoodGroup>();
  readLines(descriptions, DESCRIPTION_FIELDS, 'FOOD_DES.txt', [], (fields) => {
    const group = unquoted(fields, 1);
    if (isFoodGroup(group)) groups.set(unquoted(fields, 0), group);
  });
  return groups;
}
