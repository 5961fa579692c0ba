import { describe, expect, test } from 'vitest';
import { readStatements } from '#lib/claims/read-statements';
import type { TextContext } from '#lib/claims/statement';

/** What a text says that a dish is free of: 'treeNuts peanuts', 'vegan'; with '?' where it is unsure. */
function free(text: string, more: Partial<TextContext> = {}): string[] {
  return readStatements(text, {
    form: 'captions',
    dish: 'Cherry flapjacks',
    dishes: ['Cherry flapjacks', 'Pea soup'],
    ...more,
  }).flatMap((read) =>
    read.kind === 'freeFrom'
      ? [[...read.from, read.diet, read.unsure ? '?' : null].filter(Boolean).join(' ')]
      : [],
  );
}

// Sentences of our own; the turns of speech are common practice, no source.
describe('a dish is said to be free of something', () => {
  test.each([
    ["and they're nut free which the school likes", 'treeNuts peanuts'],
    ["so it's totally nut free so my neighbour can have one", 'treeNuts peanuts'],
    ['these flapjacks are gluten-free and keep a week', 'glutenCereals'],
    ['The whole tray is gluten free.', 'glutenCereals'],
    ['this one happens to be dairy free', 'milk'],
    ["it's gluten and dairy free", 'glutenCereals milk'],
    ['They are egg, nut and soy free.', 'egg treeNuts peanuts soy'],
    ['which makes it egg free', 'egg'],
    ["there's no egg in these", 'egg'],
    ["there's no egg in these so that's great if you've an egg allergy", 'egg'],
    ['there are no nuts in it because the office asked', 'treeNuts peanuts'],
    ['and no sesame in the soup', 'sesame'],
    ['free from nuts', 'treeNuts peanuts'],
    ['this soup is free from gluten, milk and mustard', 'glutenCereals milk mustard'],
    ["it doesn't contain any soya", 'soy'],
    ['made without dairy', 'milk'],
    ['a creamy soup without any dairy', 'milk'],
    ['no dairy at all', 'milk'],
    ['naturally vegan', 'vegan'],
    ["it's plant based as well", 'vegan'],
    ['this is a vegetarian soup', 'vegetarian'],
    ['a vegan pea soup for six', 'vegan'],
    ['it is suitable for coeliacs', 'glutenCereals'],
    ['these are vegan friendly', 'vegan'],
    ["they're nut free if you need that for a lunch box", 'treeNuts peanuts'],
    ['not only vegan but cheap', 'vegan'],
    ['you can freeze these and they are egg free', 'egg'],
    ["this is the dairy free version of my mum's", 'milk'],
  ])('%s', (text, from) => expect(free(text)).toEqual([from]));

  test.each([
    ['title', 'Vegan Cherry Flapjacks (Nut-Free!)', ['vegan', 'treeNuts peanuts']],
    ['title', 'Gluten Free Snacks for a Week', ['glutenCereals']],
    ['description', 'Egg-free, dairy-free.', ['egg', 'milk']],
    ['description', 'Good to know: no nuts, no sesame.', ['treeNuts peanuts', 'sesame']],
    ['description', '#flapjacks #glutenfree #vegan', ['glutenCereals', 'vegan']],
    ['card', 'NO EGG', ['egg']],
    ['talkingPoint', 'Say that these are soy free.', ['soy']],
  ] as const)('in a %s: %s', (form, text, from) => expect(free(text, { form })).toEqual(from));

  test('its words are those of the text, in their place', () => {
    const text = 'and these are really nut free';
    const [read] = readStatements(text, { form: 'captions' });
    expect(read?.words).toBe('nut free');
    expect(text.slice(read?.start, read?.end)).toBe('nut free');
  });

  test('what it is free of is not told as a food that is not counted', () => {
    const read = readStatements("there's no celery in it and it's nut free", {
      form: 'captions',
      ingredients: ['oats'],
    });
    expect(read.map(({ kind }) => kind)).toEqual(['freeFrom', 'freeFrom']);
  });
});

describe('nothing is said of the dish', () => {
  test.each([
    'these are not vegan',
    "it isn't gluten free",
    "they're almost dairy free",
    'vegan it is not',
    'you can make it dairy free with oat cream',
    'you could easily make these vegan',
    'to keep it gluten free use tamari',
    'if you are gluten free this is for you',
    "if you're vegan leave the honey out",
    "make sure it's gluten free",
    'check that the stock is gluten free',
    'use gluten free flour',
    '200 grams of gluten-free oats',
    'I used dairy free spread here',
    'a spoonful of vegan mayo on the side',
    'no nuts? use seeds',
    'is it nut free?',
    'is it vegan no but it is close',
    "it's vegan if you swap the butter",
    "I'm vegan",
    'my sister is gluten free',
    'my vegan friends love it',
    'for a gluten free version see below',
    'there is a vegan option too',
    'the oats are gluten free',
    'tamari, which is gluten free, goes in',
    'no egg wash on these',
    'no milk chocolate left',
    'no nuts you say',
    'six free range eggs',
    'eggs free range of course',
    "we've got no eggs so off to the shop",
    'without the nuts these are 200 calories',
    'it works without egg as well',
    'a nut free school is a quiet school',
    'feel free to add nuts',
    'sugar free',
  ])('%s', (text) => expect(free(text)).toEqual([]));

  test.each([
    ['description', '- 200 g gluten-free oats'],
    ['description', 'Gluten-free oats, 200 g'],
    ['description', 'Dairy free butter'],
  ] as const)('in a %s: %s', (form, text) => expect(free(text, { form })).toEqual([]));

  test('where it may be the name of what goes in, it is unsure', () => {
    expect(free("and it's dairy free butter the tin well")).toEqual(['milk ?']);
  });
});
