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

/** Names of several words by which cooks call the same food (common practice, no source). */
export const LONG_SYNONYMS: ReadonlyMap<string, string> = new Map([
  ['bicarbonate of soda', 'baking soda'],
  ['bicarb of soda', 'baking soda'],
  ['bicarb soda', 'baking soda'],
  ['green onion', 'spring onion'],
  ['salad onion', 'spring onion'],
  ['powdered sugar', 'icing sugar'],
  ['confectioner sugar', 'icing sugar'],
  ['castor sugar', 'caster sugar'],
  ['all purpose flour', 'plain flour'],
  ['self rising flour', 'self raising flour'],
]);

/** Foods that take another before them as their kind: of 'oat milk' none is oats (common practice, no source). */
export const TAKES_KIND = set(
  `milk butter oil flour bread stock broth sauce cheese cake biscuit cookie waffle roll wrap burger sausage powder paste
  juice jam yogurt yoghurt cream soup pie vinegar chip crisp cracker spread syrup sugar salt tea fries ball bun mince ham
  stew curry breast thigh wing leg drumstick liver fillet tortilla rice noodle pasta bacon starch dressing dip pesto bean
  tomato salad seed nut extract essence granola muffin pancake chutney relish pickle salsa hummus gravy bouillon cube
  mayonnaise mayo ketchup mustard crumb breadcrumb dumpling pudding custard jelly whey protein bagel toast puree shell
  leaf stem stalk zest peel rind skin bone fat loin chop rib steak shank meatball nugget egg roe water soda liqueur wine
  ricotta halloumi granule flake kernel floret seasoning filling topping icing frosting glaze marinade rub mix`,
);

/** Words of foods that are done to others as well: 'cream that till it is pale' (common practice, no source). */
export const DONE = {
  verbs: set(
    `cream butter salt pepper flour oil zest juice mince roll wrap dip ice toast pickle batter glaze sauce sugar crumb
    shell seed spray stuff fillet paste season cube flake chip steam brine crust fish jam stock top`,
  ),
  before: set(
    `and then to now just you we i so gonna please first next lightly gently also well i'll you'll we'll will can
    before after let's lets`,
  ),
  behind: set('it them the these those both your all my each that this everything'),
};
