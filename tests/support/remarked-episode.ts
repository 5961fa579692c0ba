import type { EpisodeFile } from '#lib/episode/schema';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from './build';

const BARLEY = {
  energyKcal: '352',
  protein: '9.91',
  fat: '1.16',
  saturated: '0.244',
  carbohydrate: '77.72',
  fibre: '15.6',
  sugars: '0.80',
  cholesterol: '0',
  sodium: '9',
};

/** A bar's label: 4 × 27, 4 × 14 and 9 × 8 less something for fibre are its 230 kcal, with 1.4 for 14 they are not. */
const BAR = {
  energyKcal: '230',
  fat: '8',
  saturated: '1',
  cholesterol: '0',
  sodium: '160',
  carbohydrate: '27',
  fibre: '4',
  sugars: '12',
  protein: '1.4',
};

/**
 * An episode whose numbers are remarked on: a pinch of a food without fibre and without sugars, twenty servings of a
 * spray labelled 0, and a label with a slipped decimal, all in one dish; in the other what asks for an answer: raw
 * meat on a food that is cooked, and a weighing of what was left in the pan.
 */
export function remarkedEpisode(): EpisodeFile {
  const barley = aFood('barley', BARLEY, { name: 'Barley, pearled' });
  const paprika = aFood(
    'paprika',
    { ...BARLEY, energyKcal: '282', carbohydrate: '53.99', fibre: '', sugars: '' },
    { name: 'Paprika, ground' },
  );
  const zeros = Object.fromEntries(Object.keys(BARLEY).map((nutrient) => [nutrient, '0']));
  const serving = { volumeMl: null, text: 'a serving' };
  const spray = aFood(
    'spray',
    zeros,
    { kind: 'label', name: 'Pan spray', section: 'other' },
    {
      basis: 'serving',
      serving: { ...serving, massMg: 250, decimals: 2, perPack: 500 },
      rule: 'us',
      source: 'package label',
    },
  );
  const bar = aFood(
    'bar',
    BAR,
    { kind: 'label', name: 'Rowan seed bar', section: 'other' },
    {
      basis: 'serving',
      serving: { ...serving, massMg: 60_000, decimals: 0, perPack: 4 },
      rule: 'us',
      source: 'package label',
    },
  );
  const mince = aFood(
    'mince',
    { ...BARLEY, carbohydrate: '0', fibre: '0', sugars: '0' },
    { name: 'Mince, browned' },
    { state: 'cooked' },
  );
  const twenty = { num: 20, den: 1 };
  const pot = aRecipe(
    'pot-recipe',
    [
      grams('pot barley', 'barley', 72.3, { text: '72.3 g barley' }),
      grams('pot paprika', 'paprika', 0.6, { text: '0.6 g paprika' }),
      grams('pot bar', 'bar', 60, { text: '60 g rowan seed bar' }),
      aLine('pot spray', 'spray', {
        text: 'pan spray',
        quantity: { low: twenty, high: twenty },
        unit: 'serving',
      }),
    ],
    { title: 'Barley pot', portions: [{ id: 'half', kind: 'count', name: 'one of two', of: 2 }] },
  );
  const pan = aRecipe(
    'pan-recipe',
    [
      grams('pan mince', 'mince', 400, { text: '400 g mince', state: 'raw' }),
      grams('pan barley', 'barley', 50, {
        text: '50 g barley',
        leftBehind: {
          kind: 'mass',
          where: 'pan',
          made: 'alike',
          lowMg: 2000,
          valueMg: 3000,
          highMg: 5000,
        },
      }),
    ],
    {
      title: 'Mince pan',
      weighings: [
        aReading('pan-raw', 'raw', 400, {
          shares: [{ lineId: 'pan mince', share: { num: 1, den: 1 } }],
        }),
      ],
    },
  );
  return aFile(
    [aDish('pot', pot, { title: 'Barley pot' }), aDish('pan', pan, { title: 'Mince pan' })],
    [barley, paprika, spray, bar, mince],
    { resolutionMg: 1 },
  );
}
