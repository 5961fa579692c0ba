import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('prices in a row of foods', () => {
  test.each([
    // Their money is said once, or only of what they come to.
    [
      'eggs two forty, flour sixty, butter one eighty, all in that is four dollars eighty',
      [
        'price 2.4 USD ingredient egg',
        'price 0.6 USD ingredient flour',
        'price 1.8 USD ingredient butter',
        'price 4.8 USD whole',
      ],
    ],
    [
      'salmon six quid, rice forty, greens eighty, so seven twenty all in',
      [
        'price 6 GBP ingredient salmon',
        'price 0.4 GBP ingredient rice',
        'price 0.8 GBP ingredient green',
        'price 7.2 GBP whole',
      ],
    ],
    [
      'beef eight dollars, beans two, tomatoes one, so eleven for the pot',
      [
        'price 8 USD ingredient beef',
        'price 2 USD ingredient bean',
        'price 1 USD ingredient tomato',
        'price 11 USD whole',
      ],
    ],
    // What they come to has a part of one: 1.10 + 0.40 = 1.50.
    [
      'beans a dollar ten and rice forty cents so one and a half for the pot',
      ['price 1.1 USD ingredient bean', 'price 0.4 USD ingredient rice', 'price 1.5 USD whole'],
    ],
    // A food by a name that is in no table.
    [
      'feta one fifty, filo two pounds, eggs eighty p',
      [
        'price 1.5 GBP ingredient feta',
        'price 2 GBP ingredient filo',
        'price 0.8 GBP ingredient egg',
      ],
    ],
    // Whole money or cents, of two foods, or a weight: nobody can say.
    [
      'beef eight dollars, twelve onions, salt',
      ['price 8 USD ingredient beef', 'amount 12 piece onion'],
    ],
    ['vinegar and soy fifty cents', []],
    ['rice sixty, beef two hundred grams', ['amount 200 g beef']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('prices whose money is said elsewhere or not at all', () => {
  test.each([
    [
      'that is four pounds twenty for the whole tray, one oh five a portion',
      ['price 4.2 GBP whole', 'price 1.05 GBP portion'],
    ],
    ['total cost four eighty five', ['price 4.85 unknown whole']],
    ['I paid six fifty for the mince', ['price 6.5 unknown ingredient mince']],
    ['two fifty worth of cheese', ['price 2.5 unknown ingredient cheese']],
    [
      'it comes to two eighty, dollars, so seventy a bowl',
      ['price 2.8 USD', 'price 0.7 USD portion'],
    ],
    ['ninety cents. ninety. for the whole pot', ['price 0.9 USD', 'price 0.9 USD whole']],
    [
      'shopping was nine pounds ten, the fish was six of that',
      ['price 9.1 GBP', 'price 6 GBP ingredient fish'],
    ],
    // Calories cost, come to and are of a lot as well.
    ['that costs you four eighty five calories', ['nutrient 485 energyKcal kcal']],
    ['calories, it comes to three fifty for the lot', ['nutrient 350 energyKcal kcal whole']],
    ['a portion comes to one eighty five', []],
    ['I got it for three forty', []],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('of what a price is', () => {
  test.each([
    ['the steak alone was nine dollars', ['price 9 USD ingredient steak']],
    ['the steaks were eleven dollars for the two', ['price 11 USD ingredient steak']],
    [
      'the salmon is the dear bit, nine pounds for two fillets',
      ['price 9 GBP ingredient salmon', 'amount 2 piece fillet'],
    ],
    ['beans, tinned, sixty nine p', ['price 0.69 GBP ingredient bean']],
    ['the lentils, sixty p for the whole bag', ['price 0.6 GBP ingredient lentil']],
    ["a quid's worth of peppers", ['price 1 GBP ingredient pepper']],
    [
      'two tins of tomatoes at fifty pence each',
      ['amount 2 piece tomato', 'price 0.5 GBP ingredient tomato'],
    ],
    ['two dozen eggs where I am is seven bucks', ['price 7 USD ingredient egg']],
    ['mince was on offer, three pound', ['price 3 GBP ingredient mince']],
    // Two prices are of two parts.
    ['cost was eight dollars, call it two a head', ['price 8 USD', 'price 2 USD about portion']],
    ['this dinner for two is under a tenner', ['portions 2 portion', 'price 10 GBP under whole']],
    ['a fiver for the four of us', ['price 5 GBP whole', 'portions 4 portion']],
    ['eight dollars for six muffins', ['price 8 USD whole', 'portions 6 piece']],
    ['a euro and a half a bowl', ['price 1.5 EUR portion']],
    ['half a dollar each', ['price 0.5 USD each']],
    // Of no dish.
    ['chicken thighs at two ninety nine a pound', []],
    ['that is two dollars less than the takeaway', []],
    ['I spent thirty quid on shopping this week', []],
    ['the cafe round the corner charges seven pounds', []],
    ['my fishing rod was a hundred and eighty quid', []],
    ['it is fifteen dollars to park at the market', []],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});
