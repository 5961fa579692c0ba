import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
type Case = readonly [text: string, said: readonly string[]];
const check = (cases: readonly Case[]) =>
  test.each(cases)('%s', (text, said) => expect(brief(text)).toEqual(said));

describe('what others say or think of it', () => {
  check([
    ['most people assume a bowl like this is eight hundred calories', []],
    [
      "some guy had a video where this was two hundred calories. it's not. it's four thirty",
      ['nutrient 430 energyKcal kcal'],
    ],
    ['that channel claims fifty grams of protein', []],
    [
      'my sister reckons nine hundred calories, it is four thirty',
      ['nutrient 430 energyKcal kcal'],
    ],
    ['I read somewhere that a bowl has seven hundred calories', []],
    // What it has is no longer theirs; nor is what they are told.
    ['everyone thinks it is stodge, it has thirty one grams of protein', ['nutrient 31 protein g']],
    ['so I will tell you, two forty calories', ['nutrient 240 energyKcal kcal']],
    ['people ask so here it is, four hundred calories', ['nutrient 400 energyKcal kcal']],
  ]);
});

describe('aims that are named before their number', () => {
  check([
    ['my budget for lunch is five hundred calories', []],
    ['the limit for salt is six grams', []],
    ['if I had six hundred calories to spend', []],
    [
      'within my target this bowl is four thirty calories',
      ['nutrient 430 energyKcal kcal portion'],
    ],
  ]);
});

describe('what is denied or was only thought', () => {
  check([
    ['it does not have forty grams of protein, it has thirty one', ['nutrient 31 protein g']],
    ["not under five hundred calories, it's five eighty five", ['nutrient 585 energyKcal kcal']],
    ['not less than thirty grams of protein a bowl', ['nutrient 30 protein g atLeast portion']],
    ["I was going to say thirty grams of protein but it's thirty four", ['nutrient 34 protein g']],
    ['you can not get forty grams of protein from lettuce', []],
  ]);
});

describe('questions and advice', () => {
  check([
    ["do you reckon that's four hundred calories or five hundred", []],
    ['the advice is no more than six grams of salt a day', []],
    ['I try to keep it around twenty one hundred calories', []],
    ['four hundred calories, do you think that is a lot', ['nutrient 400 energyKcal kcal']],
  ]);
});

describe('other things and times', () => {
  check([
    ['it has more protein than an egg, which has six grams', []],
    ['fifty two protein so far and it is four in the morning', ['nutrient 52 protein g soFar']],
    ['my coach gives me 2,200 calories a day', []],
    ['a bowl gives me thirty one grams of protein', ['nutrient 31 protein g portion']],
  ]);
});

describe('numbers that are read as what they are', () => {
  check([
    [
      'fourteen grams of protein, less than four grams of fat',
      ['nutrient 14 protein g', 'nutrient 4 fat g under'],
    ],
    [
      'two ten calories and four fat, buns are extra',
      ['nutrient 210 energyKcal kcal', 'nutrient 4 fat g'],
    ],
    [
      'eleven grams of sugar and four of that is added',
      ['nutrient 11 sugars g', 'nutrient 4 addedSugars g'],
    ],
    ['two eggs, one of which is added later', ['amount 2 piece egg']],
    ["I halved the sugar so it's seventy grams", []],
    ["so the sugar, it's eleven grams a bowl", ['nutrient 11 sugars g portion']],
    ["it's four thirty calories and there's another one ten", ['nutrient 430 energyKcal kcal']],
    [
      'last time this stew was seven ten a bowl and now it is five forty calories a bowl',
      ['nutrient 710 energyKcal kcal compared itsOwn', 'nutrient 540 energyKcal kcal portion'],
    ],
  ]);
});
