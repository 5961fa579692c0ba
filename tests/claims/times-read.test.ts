import { describe, expect, test } from 'vitest';
import { brief } from './brief';

// Invented sentences; what they say follows the conventions of the labelled texts.
describe('times', () => {
  test.each([
    ['leave it in there for another hour', ['minutes 60 min']],
    ['microwave it for two minutes thirty', ['minutes 2.5 min']],
    ['prep is ten minutes, cooking is twenty', ['minutes 10 min', 'minutes 20 min']],
    ['give it forty minutes and it is done when it looks set', ['minutes 40 min']],
    [
      'three seventy five for forty minutes and it is done',
      ['ovenTemperature 375 F', 'minutes 40 min'],
    ],
    [
      'turn it down to one eighty and give it another twenty five',
      ['ovenTemperature 180 C', 'minutes 25 min'],
    ],
    [
      'air fryer 400 for ten minutes till it looks done',
      ['ovenTemperature 400 F', 'minutes 10 min'],
    ],
    ['air fry it at three ninety six minutes a side', ['ovenTemperature 390 F', 'minutes 12 min']],
    [
      'twenty minutes, most of it stirring, about eight of that',
      ['minutes 20 min', 'minutes 8 min about'],
    ],
    ['in the slow cooker for six hours on low', ['minutes 360 min']],
    // The whole time.
    ['start to finish, forty minutes', ['readyIn 40 min']],
    ['twenty minutes from fridge to fork', ['readyIn 20 min']],
    ["start to finish the whole thing's twenty five minutes", ['readyIn 25 min']],
    ['three quarters of an hour it is in total', ['readyIn 45 min']],
    // No time of an action, and no time at all.
    ['twelve hour shifts mean I cook on sunday', []],
    ['another minute of your time', []],
    ['chill it for half an hour serves eight', ['minutes 30 min', 'portions 8 portion']],
    ['ten minutes thirty grams of butter', ['minutes 10 min', 'amount 30 g butter']],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('degrees', () => {
  test.each([
    [
      'one ninety, or one seventy fan, for thirty five minutes',
      ['ovenTemperature 190 C', 'ovenTemperature 170 C', 'minutes 35 min'],
    ],
    [
      'four twenty five in the oven twenty five minutes',
      ['ovenTemperature 425 F', 'minutes 25 min'],
    ],
    ['three fifty for half an hour', ['ovenTemperature 350 F', 'minutes 30 min']],
    ['the oven is one sixty, ah no, one eighty', ['ovenTemperature 180 C']],
    ["the middle's at seventy four", ['insideTemperature 74 C']],
    [
      "pull it at sixty three, it'll go up to sixty six",
      ['insideTemperature 63 C', 'insideTemperature 66 C'],
    ],
    ["the fish is there when it's about 60 degrees inside", ['insideTemperature 60 C about']],
    ['a bowl is three fifty, fan favourite that', []],
    ['is there sixty degrees in the middle?', []],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));
});

describe('how many there are', () => {
  test.each([
    ['serves four, or two if you are hungry', ['portions 4 portion', 'portions 2 portion']],
    ['roll them small and you get twenty two', ['portions 22 piece']],
    ['we have twelve muffins, all told', ['portions 12 piece']],
    ['they come out at sixty eight grams each cooked', ['amount 68 g each']],
    [
      'that makes sixteen and they are two hundred calories each',
      ['portions 16 piece', 'nutrient 200 energyKcal kcal each'],
    ],
    ['twelve squares is what I cut it into', ['portions 12 slice']],
    ['slice it twelve ways', ['portions 12 slice']],
    ['four muffins is a serving', []],
    ['this makes twelve tostadas', ['portions 12 piece']],
    ["I've made eleven toasties this week", []],
    ['it makes two batches', []],
    ['you get twenty two likes', []],
    [
      'you want six sausages about seven hundred grams of potatoes',
      ['amount 6 piece sausage', 'amount 700 g about potato'],
    ],
  ])('%s', (text, said) => expect(brief(text)).toEqual(said));

  test('a line of its own', () => {
    const card = { form: 'card' as const };
    expect(brief('BEAN STEW\nfor 4\ntotal time 30 min', card)).toEqual([
      'portions 4 portion',
      'readyIn 30 min',
    ]);
    expect(brief('good for 4 days', card)).toEqual([]);
    expect(brief('Egg Curry for Two\n4 eggs\n1 onion', { form: 'description' })).toEqual([
      'portions 2 portion',
      'amount 4 piece egg',
      'amount 1 piece onion',
    ]);
    const poached = 'Poach in the oven at 130°C for 1 hour 20 to 68°C in the centre.';
    expect(brief(poached, { form: 'description' })).toEqual([
      'ovenTemperature 130 C',
      'minutes 80 min',
      'insideTemperature 68 C',
    ]);
  });
});

describe('claim words', () => {
  test.each([
    [
      'Low Calorie, High Protein Cheesecake',
      ['claimWord energyKcal low', 'claimWord protein high'],
    ],
    ['Low-Sugar Rhubarb Crumble', ['claimWord sugars low']],
  ])('%s', (text, said) => expect(brief(text, { form: 'title' })).toEqual(said));

  test.each([
    ['low calorie it is not', []],
    ['sugar free, no, a banana is a banana', []],
    ['I would not call it high fibre', []],
    ['it is sugar free, no butter either', ['claimWord sugars free']],
    ['it has forty percent less fat', ['nutrient 40 fat %']],
  ])('%s', (text, said) =>
    expect(brief(text).map((line) => line.replace(/ compared.*/, ''))).toEqual(said),
  );
});
