import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('on which side of its number a food stands', () => {
  test.each([
    // A row that begins with a food and ends with a number.
    [
      'flour two fifty sugar eighty butter one ten all in grams',
      ['amount 250 g flour', 'amount 80 g sugar', 'amount 110 g butter'],
    ],
    [
      'flour two hundred grams sugar eighty grams butter a hundred and ten grams',
      ['amount 200 g flour', 'amount 80 g sugar', 'amount 110 g butter'],
    ],
    ['milk two hundred mil cream fifty mil', ['amount 200 ml milk', 'amount 50 ml cream']],
    // And one that begins with a number.
    [
      'five hundred grams chicken mince six eggs two onions',
      ['amount 500 g chicken mince', 'amount 6 piece egg', 'amount 2 piece onion'],
    ],
    // A food at both ends: nobody can say.
    ['chicken five hundred grams rice two hundred grams broccoli', []],
    // A label.
    [
      'protein twenty sugar eight salt one',
      ['nutrient 20 protein g', 'nutrient 8 sugars g', 'nutrient 1 salt g'],
    ],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('sugar and salt that go in', () => {
  test.each([
    [
      'two hundred grams of flour, eighty grams of sugar, ten grams of butter',
      ['amount 200 g flour', 'amount 80 g sugar', 'amount 10 g butter'],
    ],
    [
      'ninety grams of caster sugar and two eggs',
      ['amount 90 g caster sugar', 'amount 2 piece egg'],
    ],
    [
      'a tablespoon of honey, seventeen grams of sugar',
      ['amount 1 tbsp honey', 'nutrient 17 sugars g'],
    ],
    ['eleven grams of sugar and nine grams of fat', ['nutrient 11 sugars g', 'nutrient 9 fat g']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('measures that are said once for a row, or not at all', () => {
  test.each([
    [
      'soy sauce two tablespoons, honey one, rice vinegar one',
      ['amount 2 tbsp soy sauce', 'amount 1 tbsp honey', 'amount 1 tbsp rice vinegar'],
    ],
    [
      'five hundred grams of flour, ten of salt and seven of yeast',
      ['amount 500 g flour', 'amount 10 g salt', 'amount 7 g yeast'],
    ],
    ['eggs, two, flour, two hundred grams', ['amount 2 piece egg', 'amount 200 g flour']],
    [
      'rice, two hundred and ten. beef, one eighty. sesame oil, five',
      ['amount 210 g rice', 'amount 180 g beef', 'amount 5 g sesame oil'],
    ],
    ['six egg and six hundred gram of potato', ['amount 6 piece egg', 'amount 600 g potato']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('lines without a mark', () => {
  test('a food behind each number, also where one has its own of', () => {
    expect(brief('a pound of beef\nthree carrots\nfour potatoes\na cup of broth')).toEqual([
      'amount 1 lb beef',
      'amount 3 piece carrot',
      'amount 4 piece potato',
      'amount 1 cup broth',
    ]);
  });
});

describe('packs, pieces and what is left of a food', () => {
  test.each([
    ['two four hundred gram tins of tomatoes', ['amount 2 piece tomato']],
    ['I use three 150 gram pots of skyr', ['amount 3 piece skyr']],
    ['it comes in a 150 gram pot', []],
    [
      'one tin of tuna, which is a hundred and twelve grams drained',
      ['amount 1 piece tuna', 'amount 112 g tuna'],
    ],
    ['one block of tofu, that is two eighty drained', ['amount 1 piece tofu', 'amount 280 g tofu']],
    ['it is two eighty and then we drained it', []],
    ['six dumplings, ninety grams each', ['portions 6 piece', 'amount 90 g each']],
    ['each ball is about thirty grams', ['amount 30 g about each']],
    [
      'shape into eight patties, a hundred and ten grams a patty',
      ['portions 8 piece', 'amount 110 g each'],
    ],
    [
      'roll them to about thirty grams, you get twenty four',
      ['amount 30 g about each', 'portions 24 piece'],
    ],
    ['ten portions of two fifty grams', ['portions 10 portion', 'amount 250 g portion']],
    ['the whole thing weighs nine forty', ['amount 940 g whole']],
    [
      'two chicken breasts at about a hundred and eighty grams each',
      ['amount 2 piece chicken breast', 'amount 180 g about each chicken breast'],
    ],
    ['bread, two slices, and butter', ['amount 2 piece bread']],
    ['equal parts soy and honey, two tablespoons of each', []],
    ['four sausages, nine grams each', ['portions 4 piece']],
    ['forty grams of butter for the whole pan', ['amount 40 g whole butter']],
    ['two eggs in the bowl', ['amount 2 piece egg']],
    ['the tray came to nine hundred grams cooked', ['amount 900 g whole']],
    // Of a nutrient, a person, a part of which something is said.
    [
      'so it is four burgers, thirty one grams each, protein I mean',
      ['portions 4 piece', 'nutrient 31 protein g each'],
    ],
    ['I weighed one eighty last week', []],
    ['a slice of 150 grams has nine grams of protein', ['nutrient 9 protein g']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('lists in writing', () => {
  const description = { form: 'description' as const };
  test.each([
    [
      'INGREDIENTS\nFlour – 250g\nSugar – 80g\nButter – 110g\nEggs – 2',
      ['amount 250 g flour', 'amount 80 g sugar', 'amount 110 g butter', 'amount 2 piece egg'],
    ],
    [
      'Chicken thighs: 600g (boneless)\nSoy sauce: 3 tbsp\nSalt 1 tsp',
      ['amount 600 g chicken thigh', 'amount 3 tbsp soy sauce', 'amount 1 tsp salt'],
    ],
    // Labels and what a food has of a nutrient.
    [
      'Sugar: 8g\nSalt: 1g\nFat: 5g',
      ['nutrient 8 sugars g', 'nutrient 1 salt g', 'nutrient 5 fat g'],
    ],
    [
      'Chicken: 31 g protein\nRice: 4 g protein',
      ['nutrient 31 protein g ingredient chicken', 'nutrient 4 protein g ingredient rice'],
    ],
  ])('%s', (text, said) => expect(brief(text, description)).toEqual(said));
});
