/** Energy per gram. kcal: 21 CFR 101.9(c)(1)(i)(B); kJ and polyols, fibre: Regulation 1169/2011 Annex XIV. */
export const ENERGY_PER_G = {
  kcal: { protein: 4, carbohydrate: 4, fat: 9, alcohol: 7, fibre: 2 },
  kJ: { protein: 17, carbohydrate: 17, fat: 37, alcohol: 29, fibre: 8 },
} as const;
