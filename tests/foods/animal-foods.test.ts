import { expect, test } from 'vitest';
import { animalFoodsIn } from '#lib/foods/animal-foods';

// Names as tables and ingredients have them; what a diet leaves out is common practice, no source.
test.each([
  ['Chicken, broilers or fryers, breast, meat only, raw', ['meat']],
  ['Pork, cured, bacon, cooked', ['meat']],
  ['500 ml beef stock', ['meat']],
  ['Gelatins, dry powder, unsweetened', ['gelatine']],
  ['2 tbsp runny honey', ['honey']],
  ['chicken with vegan mayo', ['meat']],
  ['gluten-free pork sausages', ['meat']],
  ['Bacon, meatless', []],
  ['6 vegan sausages', []],
  ['2 beef tomatoes', []],
  ['Egg, duck, whole, fresh, raw', []],
  ['Nuts, coconut meat, raw', []],
  ['4 burger buns', []],
  ['Melons, honeydew, raw', []],
  ['black bean burgers', []],
])('%s', (name, foods) => expect(animalFoodsIn(name)).toEqual(foods));
