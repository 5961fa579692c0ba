import { describe, expect, test } from 'vitest';
import { brief } from './brief';

const kcal = (number: number, scope = '') => `nutrient ${number} energyKcal kcal ${scope}`.trim();
const gram = (number: number, scope = '') => `nutrient ${number} protein g ${scope}`.trim();

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('parts in words of their own', () => {
  const tacos = { dish: 'Cod tacos', dishes: ['Cod tacos'] };
  const dip = { dish: 'Broad bean dip', dishes: ['Broad bean dip'] };
  test.each([
    // All of it, by a word that is no known part; half of it, with the number later.
    [
      'the entire dip, every scrap of it, is 980 calories and 60 of protein. so if you have half of that, like I did, that is four ninety and thirty',
      dip,
      [kcal(980, 'whole'), gram(60, 'whole'), kcal(490, 'half'), gram(30, 'half')],
    ],
    [
      'the whole tub is 420 calories. so half the tub, two ten',
      dip,
      [kcal(420, 'whole'), kcal(210, 'half')],
    ],
    ['the whole point is 30 grams of protein', {}, [gram(30)]],
    // So many of the pieces, and one.
    [
      'for three tacos you get 27 grams of protein and 360 calories so one twenty a taco',
      tacos,
      [gram(27, 'unknown'), kcal(360, 'unknown'), kcal(120, 'each')],
    ],
    [
      'one taco that is 120 calories two of them two forty',
      tacos,
      [kcal(120, 'each'), kcal(240, 'unknown')],
    ],
    [
      '410 calories 30 protein and I am gonna be honest I had two of them',
      {},
      [kcal(410), gram(30)],
    ],
    [
      '2 TACOS\n240 CAL · 18 G PROTEIN',
      { ...tacos, form: 'card' as const },
      [kcal(240, 'unknown'), gram(18, 'unknown')],
    ],
    // Where it lies.
    [
      'so the macros on a plate 390 calories 46 protein',
      {},
      [kcal(390, 'portion'), gram(46, 'portion')],
    ],
    ['310 calories on my plate', {}, [kcal(310, 'portion')]],
    ['put it on a plate. 310 calories.', {}, [kcal(310)]],
    [
      'one serving of the stuffed peppers is 318 calories',
      { dish: 'Stuffed peppers', dishes: ['Stuffed peppers'] },
      [kcal(318, 'portion')],
    ],
    ['a bowl of this at 290 calories', {}, [kcal(290, 'portion')]],
    // A hedge of the next is no comparison.
    [
      'a slice is 135 calories, fourteen protein less than four fat',
      {},
      [kcal(135, 'slice'), gram(14, 'slice'), 'nutrient 4 fat g under slice'],
    ],
    // Said after the numbers.
    [
      'thirty one protein twenty eight carbs, this is for the all pancakes together',
      { dish: 'Oat pancakes', dishes: ['Oat pancakes'] },
      [gram(31, 'whole'), 'nutrient 28 carbohydrate g whole'],
    ],
    [
      '1680 calories and 124 protein. now that is for the full batch remember',
      {},
      [kcal(1680, 'whole'), gram(124, 'whole')],
    ],
    [
      '420 calories, 31 protein. that is everything, the sauce and all',
      {},
      [kcal(420, 'whole'), gram(31, 'whole')],
    ],
    [
      '420 calories, 31 protein, and that is three patties',
      {},
      [kcal(420, 'unknown'), gram(31, 'unknown')],
    ],
    ['30 protein for all you runners', {}, [gram(30)]],
    // Shares of a part are no part with a name.
    ['three quarters of a portion is 300 calories', {}, [kcal(300, 'unknown')]],
    ['half of one is 90 calories', {}, [kcal(90, 'unknown')]],
    ['a double portion is 800 calories', {}, [kcal(800, 'unknown')]],
    ['if you split it between two it is 500 calories each', {}, [kcal(500, 'portion')]],
    // A pot is all of it, but where it is one of several, or the dish is set in pots.
    ['the pot is 1500 calories', {}, [kcal(1500, 'whole')]],
    ['six pots out of this, 310 calories a pot', {}, ['portions 6 portion', kcal(310, 'portion')]],
    [
      '150 calories a pot',
      { dish: 'Coffee mousse', dishes: ['Coffee mousse'] },
      [kcal(150, 'portion')],
    ],
    // A word for the day away from a number that has its part, and no day that is counted.
    ['one plate is 260 calories, no mango pickle today', {}, [kcal(260, 'portion')]],
    ['it is 600 calories, and it is my day off', {}, [kcal(600)]],
    ['up to now today I have had 1150 calories', {}, [kcal(1150, 'soFar')]],
    [
      'protein so far today is 182, so that is 232 grams of protein for the day',
      {},
      [gram(182, 'soFar'), gram(232, 'day')],
    ],
    ['there are 44 grams of protein in my half', {}, [gram(44, 'half')]],
    ['34 grams of protein a plate, give or take', {}, ['nutrient 34 protein g about portion']],
    // One of what the title names, and the dish itself.
    [
      'one dosa is 280 calories',
      { dish: 'Onion dosa', dishes: ['Onion dosa'] },
      [kcal(280, 'each')],
    ],
    ['it is 480 calories this wrap', { dish: 'Hummus wrap', dishes: ['Hummus wrap'] }, [kcal(480)]],
    // A day is more than all of a meal.
    [
      'for the day, all four meals: 2310 kcal and 161 protein',
      { form: 'description' as const },
      [kcal(2310, 'day'), gram(161, 'day')],
    ],
    // In a title the name of the dish is no part, and a price keeps its own.
    ['Chilli Noodle Bowl: 45 g protein', { form: 'title' as const }, [gram(45)]],
    [
      'One pot, 45 g protein, $2 a bowl',
      { form: 'title' as const },
      [gram(45), 'price 2 USD portion'],
    ],
  ])('%s', (text, context, said) => expect(brief(text, context)).toEqual(said));
});

describe('dishes of others', () => {
  test.each([
    [
      'the vending machine flapjack is 460 calories and six grams of protein and mine is 210 and eleven',
      [kcal(460, 'compared itsOwn'), gram(6, 'compared itsOwn'), kcal(210), gram(11)],
    ],
    [
      'A plate is 460 calories, and the pub version with chips is around 900.',
      [kcal(460, 'portion'), 'nutrient 900 energyKcal kcal about compared itsOwn'],
    ],
    ["my nan's hotpot is 640 calories, this is 410", [kcal(640, 'compared itsOwn'), kcal(410)]],
    [
      'the lamb stew I grew up on was 800 calories and this one is 490',
      [kcal(800, 'compared itsOwn'), kcal(490)],
    ],
    [
      'this bowl has 24 grams of protein and the one in the petrol station has 11',
      [gram(24, 'portion'), gram(11, 'compared itsOwn')],
    ],
    [
      "a plate is 445 calories and the hotel's is 700",
      [kcal(445, 'portion'), kcal(700, 'compared itsOwn')],
    ],
    [
      'the one off the truck is 980 calories, mine here is 590',
      [kcal(980, 'compared itsOwn'), kcal(590)],
    ],
    // Foods, persons and places that are none of it.
    ['the frozen peas are 70 calories', [kcal(70, 'ingredient pea')]],
    ["my mum's portion is 600 calories", [kcal(600, 'portion')]],
    ["it is my gran's recipe and it is 400 calories", [kcal(400)]],
    ['I work at a bakery and this is 300 calories a slice', [kcal(300, 'slice')]],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});
