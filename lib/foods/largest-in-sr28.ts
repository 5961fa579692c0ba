import type { LargestValue } from '#lib/foods/largest-value';
import type { Nutrient } from '#lib/foods/nutrients';

/**
 * The largest value of each vitamin, mineral and of cholesterol per 100 g in USDA SR28, in the nutrient's unit, and
 * the first food that has it. Written by `seed/build-largest-values.ts`; a test holds it against the table.
 */
export const LARGEST_IN_SR28: Partial<Readonly<Record<Nutrient, LargestValue>>> = {
  calcium: {
    value: 7364,
    sourceNo: '18370',
    name: 'Leavening agents, baking powder, double-acting, straight phosphate',
  },
  iron: { value: 123.6, sourceNo: '02042', name: 'Spices, thyme, dried' },
  magnesium: { value: 781, sourceNo: '20060', name: 'Rice bran, crude' },
  phosphorus: {
    value: 9918,
    sourceNo: '18370',
    name: 'Leavening agents, baking powder, double-acting, straight phosphate',
  },
  potassium: { value: 16500, sourceNo: '18373', name: 'Leavening agents, cream of tartar' },
  zinc: { value: 90.95, sourceNo: '15170', name: 'Mollusks, oyster, eastern, canned' },
  copper: {
    value: 15.05,
    sourceNo: '17204',
    name: 'Veal, variety meats and by-products, liver, cooked, pan-fried',
  },
  manganese: {
    value: 328,
    sourceNo: '23424',
    name: 'Beef, New Zealand, imported, variety meats and by-products liver, cooked, boiled',
  },
  selenium: { value: 1917, sourceNo: '12078', name: 'Nuts, brazilnuts, dried, unblanched' },
  vitaminC: { value: 2732, sourceNo: '03022', name: 'Babyfood' },
  thiamin: { value: 23.375, sourceNo: '43406', name: 'Yeast extract spread' },
  riboflavin: { value: 17.5, sourceNo: '43406', name: 'Yeast extract spread' },
  niacin: { value: 127.5, sourceNo: '43406', name: 'Yeast extract spread' },
  pantothenicAcid: { value: 34.5, sourceNo: '08028', name: 'Cereals ready-to-eat' },
  vitaminB6: { value: 12, sourceNo: '08001', name: 'Cereals ready-to-eat' },
  folate: { value: 3786, sourceNo: '43406', name: 'Yeast extract spread' },
  folicAcid: { value: 2993, sourceNo: '43406', name: 'Yeast extract spread' },
  foodFolate: {
    value: 2340,
    sourceNo: '18375',
    name: "Leavening agents, yeast, baker's, active dry",
  },
  folateDfe: { value: 5881, sourceNo: '43406', name: 'Yeast extract spread' },
  choline: { value: 2403.3, sourceNo: '01137', name: 'Egg, yolk, dried' },
  vitaminB12: {
    value: 98.89,
    sourceNo: '15159',
    name: 'Mollusks, clam, mixed species, cooked, moist heat',
  },
  vitaminAIu: { value: 100000, sourceNo: '04589', name: 'Fish oil, cod liver' },
  vitaminARae: { value: 30000, sourceNo: '04589', name: 'Fish oil, cod liver' },
  retinol: { value: 30000, sourceNo: '04589', name: 'Fish oil, cod liver' },
  alphaCarotene: { value: 14251, sourceNo: '11683', name: 'Carrot, dehydrated' },
  betaCarotene: { value: 42891, sourceNo: '11931', name: 'Peppers, sweet, red, freeze-dried' },
  betaCryptoxanthin: { value: 6252, sourceNo: '02031', name: 'Spices, pepper, red or cayenne' },
  lycopene: { value: 46260, sourceNo: '11548', name: 'Tomato powder' },
  luteinZeaxanthin: {
    value: 19697,
    sourceNo: '11236',
    name: 'Kale, frozen, cooked, boiled, drained, without salt',
  },
  vitaminE: { value: 149.4, sourceNo: '04038', name: 'Oil, wheat germ' },
  vitaminDMicrograms: { value: 250, sourceNo: '04589', name: 'Fish oil, cod liver' },
  vitaminDIu: { value: 10000, sourceNo: '04589', name: 'Fish oil, cod liver' },
  vitaminK: { value: 1714.5, sourceNo: '02003', name: 'Spices, basil, dried' },
  cholesterol: {
    value: 3100,
    sourceNo: '13320',
    name: 'Beef, variety meats and by-products, brain, cooked, simmered',
  },
};
