import type { Role } from '../language';
import { all, framed, phrasesOf, set } from './words';

/** What a dish lies in, or all of it; and kinds of dishes, which are the dish itself unless 'whole' is said. */
export const VESSELS = phrasesOf(
  'tray, pan, pot, batch, thing, recipe, dish, skillet, sheet pan, tin, sheet, lot, wok, baking dish, casserole dish, kadai, karahi, slow cooker, dutch oven, roasting tin, tray bake, slab, big dish, big pot, big tray, big pan, big batch, vat, cauldron, handi, tava',
);
export const WHOLE = [
  ...VESSELS,
  ...phrasesOf(
    'loaf, casserole, pie, cake, bake, meatloaf, lasagne, lasagna, traybake, curry, stew, pizza, quiche, mix, chili, chilli, soup, frittata, bread, cheesecake, dip, salad, tub, pudding, crumble, cobbler, risotto, granola, ragu, roast, gratin, slaw, trifle, ice cream, pastry, tagine, dal, dhal, biryani, paella, moussaka, focaccia, brownie tray, tray of brownies, pan of brownies, batch of cookies, batch of muffins, mixture, dough, batter, filling, platter, plateful, stack',
  ),
];
export const PORTION = phrasesOf(
  'portion, serving, serve, katori, thali, tiffin, ladleful, lunch box, plate, bowl, jar, helping, person, head, plateful, bowlful, box, container, mug, glass, meal, lunchbox',
);
export const SLICE = phrasesOf('slice, square, wedge');
export const EACH = phrasesOf(
  'muffin, patty, pasty, calzone, sausage roll, fritter, pancake, fillet, cookie, burger, ball, meatball, piece, taco, wrap, burrito, bar, bite, skewer, roll, bun, parcel, flatbread, waffle, cupcake, scone, dumpling, nugget, drumstick, egg cup, biscuit, brownie, bagel, pepper, tart, quesadilla, falafel, kofta, kebab, enchilada, sandwich, doughnut, donut, crepe, blini, roulade, cutlet, steak, breast, thigh, sausage, pastry, omelette, toast, boat, pocket, roll-up, pita, samosa, spring roll, cake, popsicle, truffle, stuffed pepper, pitta, egg muffin, rissole, croquette, chop, finger, strip, twist, wing, lolly, pop, cracker, tartlet, pinwheel, bhaji, pakora, gyoza, wonton, blondie, macaroon, oatcake, cluster, ladoo, laddu, empanada, tamale, latke, croissant, pretzel, slider, fishcake, fish cake, crab cake, potato cake, crumpet, hash brown, arancini, arancino, kiev, cob, knot, puff, energy ball, protein ball, rice cake, turnover, galette',
);

/** The plural of a part. */
export const plural = (word: string): string =>
  /(ss|sh|ch|x|(pot|tom)ato|mango)$/.test(word)
    ? `${word}es`
    : word.endsWith('f')
      ? `${word.slice(0, -1)}ves`
      : /[^aeiou]y$/.test(word)
        ? `${word.slice(0, -1)}ies`
        : `${word}s`;

const thing = (
  nouns: readonly string[],
  as: 'portion' | 'slice' | 'piece' | 'whole' | 'person' | 'meal',
): [string, Role][] =>
  nouns.flatMap((noun) =>
    [noun, plural(noun)].map((form): [string, Role] => [form, { cat: 'thing', as }]),
  );

/** Parts as they are counted. */
export const THINGS: [string, Role][] = [
  ...thing(
    PORTION.filter((word) => word !== 'head' && word !== 'person' && word !== 'meal'),
    'portion',
  ),
  ...all<Role>('people, adults, kids, persons, hungry people, of us, of you', {
    cat: 'thing',
    as: 'person',
  }),
  ...thing(
    phrasesOf('lunch, dinner, breakfast, supper, meal, tea, tub, meal prep, feed, takeaway box'),
    'meal',
  ),
  ...[
    ...phrasesOf('breakfast, lunch, dinner, supper, brunch, snack, snacks'),
    ...framed('meal {}', phrasesOf('one, two, three, four, five, six, 1, 2, 3, 4, 5, 6')),
  ].map((meal): [string, Role] => [meal, { cat: 'meal', meal }]),
  ...all<Role>('little ones, small ones, big ones, ones', { cat: 'thing', as: 'piece' }),
  ...thing(SLICE, 'slice'),
  ...thing(EACH, 'piece'),
  ...thing(VESSELS, 'whole'),
];

/** How big or good a part is said to be. */
export const ADJECTIVES = set(
  'sized filled loaded built stuffed finished plated assembled full big bigger huge enormous massive ginormous giant generous decent good proper normal sensible modest hefty hearty lovely nice little tiny fat chunky thick great great-big sizeable deep heaped honest typical actual fairly-sized standard small large medium regular-sized warm hot',
);
