import { FDC_DATA_TYPES, type FdcBranded, type FdcRecord } from '#lib/foods/fdc-record';
import type { AllergenFact, Food, FoodVersion, Section } from '#lib/foods/food';
import { fdcFactors, fdcMeasures } from '#lib/foods/fdc-measures';
import { fdcPartId, fdcRecordId, type FdcKey } from '#lib/foods/fdc-ids';
import { sectionOfCategory } from '#lib/foods/fdc-sections';
import { readServing } from '#lib/foods/fdc-serving';
import { fdcValues } from '#lib/foods/fdc-values';
import { isFoodGroup, sectionOf } from '#lib/foods/food-groups';
import { readGtin, gtinFault } from '#lib/foods/gtin';
import { guessState } from '#lib/foods/guess-state';
import { proposeAllergens } from '#lib/foods/propose-allergens';

export const FDC_SOURCE = 'USDA FoodData Central';

/** A food of a download, what of its product the store keeps beside it, and what could not be taken as it stands. */
export interface FdcFood {
  readonly food: Food;
  readonly fdcId: number;
  readonly key: FdcKey;
  readonly product: FdcProduct;
  /** What was wrong in the record, in words; the food is kept all the same. */
  readonly faults: readonly string[];
}

export interface FdcProduct {
  /** As typed in the source, right or wrong; null for a food that is no product. */
  readonly gtin: string | null;
  readonly brand: string | null;
  /** The ingredient list as printed. */
  readonly ingredients: string | null;
}

const NO_PRODUCT: FdcProduct = { gtin: null, brand: null, ingredients: null };
const LONGEST = { name: 240, gtin: 40, brand: 160, ingredients: 8000 } as const;

/**
 * A record of FoodData Central as a food. A product (`branded_food`) is stated for its label's serving, with the
 * numbers that its label printed; foods of the two tables for 100 g with their digits. A blank stays missing.
 * Carbohydrate holds fibre (by difference, or a US label), except on labels of New Zealand, which state the
 * available one (Food Standards Code 1.2.8, from memory). Null with the reason where it cannot be a food.
 */
export function fdcFood(record: FdcRecord): FdcFood | { readonly refused: string } {
  const { fdcId, branded, dataType } = record;
  if (!Number.isInteger(fdcId) || fdcId < 1 || fdcId > 2_147_483_647) {
    return { refused: 'it has no whole number above zero as fdc_id' };
  }
  const described = record.description.trim().replace(/\s+/g, ' ');
  if (described === '') return { refused: `food ${fdcId} has no description` };
  const product = branded ? productOf(branded) : NO_PRODUCT;
  const name = nameOf(described, branded);
  const faults: string[] = [];
  if (dataType === 'branded_food' && !branded)
    faults.push('its row in branded_food.csv is missing');
  const gtinWrong = product.gtin === null ? null : gtinFault(product.gtin);
  if (gtinWrong) faults.push(gtinWrong);
  const serving = branded ? readServing(branded, faults) : null;
  const read = fdcValues(record.nutrients, branded && serving, faults);
  const key = keyOf(fdcId, product);
  const section = sectionOfRecord(record, name);
  const version: FoodVersion = {
    id: fdcRecordId('version', fdcId, 0),
    seq: 1,
    basis: serving?.perServing ? 'serving' : serving?.unit === 'ml' ? 'per100ml' : 'per100g',
    serving: serving?.serving ?? null,
    values: read,
    secondColumn: null,
    carbBasis: branded && isFrom(branded, 'new zealand') ? 'available' : 'total',
    state: branded ? 'asIs' : stateOf(record, described),
    factors: fdcFactors(record.factors),
    refuse: null,
    rule: serving?.rule ?? 'asPrinted',
    source: FDC_SOURCE,
    release: releaseOf(record, faults),
    sourceNo: String(fdcId),
    dateRead: null,
    kept: gtinWrong ? [{ code: 'gtin-check-digit', reason: gtinWrong.slice(0, 400) }] : [],
  };
  return {
    fdcId,
    key,
    product,
    faults,
    food: {
      id: fdcPartId('food', key, 0),
      kind: 'reference',
      name,
      section,
      witnessId: null,
      version,
      measures: fdcMeasures(fdcId, record.portions, faults),
      yields: [],
      allergens: allergensOf(record, name, key),
    },
  };
}

function productOf({ gtin, brandName, brandOwner, ingredients }: FdcBranded): FdcProduct {
  const kept = (text: string, most: number) =>
    text.trim().replace(/\s+/g, ' ').slice(0, most) || null;
  return {
    gtin: kept(gtin, LONGEST.gtin),
    brand: kept(brandName, LONGEST.brand) ?? kept(brandOwner, LONGEST.brand),
    ingredients: kept(ingredients, LONGEST.ingredients),
  };
}

/** A product is the same food while its barcode number stays; a wrong number says nothing about two records. */
function keyOf(fdcId: number, { gtin }: FdcProduct): FdcKey {
  const read = gtin === null ? null : readGtin(gtin);
  if (read?.kind !== 'right' || /^0+$/.test(read.gtin14)) return { by: 'record', fdcId };
  return { by: 'gtin', gtin14: read.gtin14 };
}

/** The description with its brand, unless it says that itself. */
function nameOf(described: string, branded: FdcBranded | null): string {
  const brand = branded ? productOf(branded).brand : null;
  const said = brand === null || described.toLowerCase().includes(brand.toLowerCase());
  return (said ? described : `${described}, ${brand}`).slice(0, LONGEST.name).trim();
}

function sectionOfRecord({ branded, groupCode }: FdcRecord, name: string): Section {
  if (branded) return sectionOfCategory(branded.category);
  return isFoodGroup(groupCode) ? sectionOf(groupCode, name) : 'other';
}

function stateOf({ groupCode }: FdcRecord, name: string): FoodVersion['state'] {
  if (isFoodGroup(groupCode)) return guessState(groupCode, name);
  return /\braw\b/i.test(name) ? 'raw' : 'asIs';
}

function releaseOf({ dataType, published }: FdcRecord, faults: string[]): string {
  const on = readDate(published);
  if (on === null && published.trim() !== '') {
    faults.push(`"${published.trim().slice(0, 40)}" is no date of publication`);
  }
  return [FDC_DATA_TYPES[dataType], on].filter((part) => part !== null).join(' ');
}

/** A date as the tables ("2021-10-28") or the JSON ("10/28/2021") print it; null if it is none. */
export function readDate(text: string): string | null {
  const plain = text.trim();
  const [, month = '', day = '', year = ''] = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec(plain) ?? [];
  const iso = year === '' ? plain : `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(iso)) return null;
  const at = new Date(`${iso}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(iso) ? iso : null;
}

/** Whether a product is sold in a country, by its English name; blank is the United States. */
export function isFrom({ marketCountry }: FdcBranded, country: string): boolean {
  const plain = marketCountry.trim().toLowerCase();
  return (plain === '' ? 'united states' : plain) === country;
}

function allergensOf(record: FdcRecord, name: string, key: FdcKey): AllergenFact[] {
  const group = isFoodGroup(record.groupCode) ? record.groupCode : null;
  const byName = proposeAllergens(name, record.branded ? null : group);
  const listed = record.branded?.ingredients ?? '';
  const byList = (listed === '' ? [] : proposeAllergens(listed, null)).map((each) => ({
    ...each,
    reason: each.reason.replace('its name says', 'its ingredient list says'),
  }));
  const found = new Map([...byList, ...byName].map((each) => [each.allergen, each]));
  return [...found.values()].map(({ allergen, reason }, index) => ({
    id: fdcPartId('allergen', key, index),
    allergen,
    standing: 'proposed',
    reason: reason.slice(0, 200),
  }));
}
