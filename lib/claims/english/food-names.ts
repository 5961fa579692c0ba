import { set } from './words';

/**
 * Last words of names, and the words behind which cooks leave them out (common practice, no source). Not where the word
 * alone is another food: garlic and garlic powder, coconut and coconut milk, tomato and tomato paste are two.
 */
export const LEFT_OUT: ReadonlyMap<string, ReadonlySet<string>> = new Map([
  ['powder', set('cocoa cacao curry protein whey matcha custard chili cayenne turmeric')],
  ['protein', set('whey casein')],
  ['isolate', set('protein whey')],
  ['extract', set('vanilla')],
  ['essence', set('vanilla')],
  ['paste', set('vanilla miso harissa tahini gochujang')],
  ['cube', set('bouillon broth')],
  [
    'cheese',
    set(
      'cheddar feta mozzarella parmesan gouda halloumi ricotta gruyere brie emmental edam manchego pecorino mascarpone',
    ),
  ],
  ['seed', set('chia flax sesame cumin fennel')],
  ['nut', set('cashew pecan walnut hazelnut macadamia pistachio')],
  ['leaf', set('mint basil spinach cilantro parsley lettuce sage bay')],
  ['fillet', set('salmon cod haddock tuna trout anchovy')],
  ['rice', set('basmati jasmine arborio')],
  ['noodle', set('udon soba ramen')],
  ['bread', set('sourdough ciabatta focaccia naan pita rye')],
  ['sauce', set('worcestershire sriracha tabasco teriyaki hoisin marinara')],
  ['syrup', set('maple agave')],
]);

/** What is got of a food and is not counted apart where the food follows: 'the juice of half a lemon'. */
export const GOT_OF = set(
  'juice zest peel rind flesh seed leaf stalk stem clove squeeze wedge slice',
);
