import type { Nutrient } from '#lib/foods/nutrients';

type Values = Partial<Readonly<Record<Nutrient, number>>>;

/**
 * Daily Values for adults and children of four and more, in the nutrient's unit: 21 CFR 101.9(c)(9) for protein and
 * fibre, 101.9(c)(8)(iv) for vitamins and minerals.
 */
export const US_DAILY_VALUES: Values = {
  protein: 50,
  fibre: 28,
  vitaminARae: 900,
  vitaminC: 90,
  vitaminDMicrograms: 20,
  vitaminE: 15,
  vitaminK: 120,
  thiamin: 1.2,
  riboflavin: 1.3,
  niacin: 16,
  vitaminB6: 1.7,
  folateDfe: 400,
  vitaminB12: 2.4,
  pantothenicAcid: 5,
  choline: 550,
  calcium: 1300,
  iron: 18,
  magnesium: 420,
  phosphorus: 1250,
  potassium: 4700,
  zinc: 11,
  copper: 0.9,
  manganese: 2.3,
  selenium: 55,
};

/** Daily reference intakes (NRV) in the nutrient's unit: Regulation (EU) 1169/2011, Annex XIII, part A. */
export const EU_REFERENCE_VALUES: Values = {
  vitaminARae: 800,
  vitaminDMicrograms: 5,
  vitaminE: 12,
  vitaminK: 75,
  vitaminC: 80,
  thiamin: 1.1,
  riboflavin: 1.4,
  niacin: 16,
  vitaminB6: 1.4,
  folate: 200,
  vitaminB12: 2.5,
  pantothenicAcid: 6,
  potassium: 2000,
  calcium: 800,
  phosphorus: 700,
  magnesium: 375,
  iron: 14,
  zinc: 10,
  copper: 1,
  manganese: 2,
  selenium: 55,
};
