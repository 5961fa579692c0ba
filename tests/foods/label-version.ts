import type { FoodVersion } from '#lib/foods/food';

/** A package label per serving of 30 g by the US rule, with the parts a test wants otherwise. */
export function labelVersion(parts: Partial<FoodVersion>): FoodVersion {
  return {
    id: 'version-1',
    seq: 1,
    basis: 'serving',
    serving: { massMg: 30_000, volumeMl: null, decimals: 0, text: '1 piece', perPack: null },
    values: {},
    secondColumn: null,
    carbBasis: 'total',
    state: 'asIs',
    factors: null,
    refuse: null,
    rule: 'us',
    source: 'package label',
    release: '',
    sourceNo: '',
    dateRead: null,
    kept: [],
    ...parts,
  };
}
