import { framed, phrasesOf } from './words';

/** Where dishes of others come from. */
export const BOUGHT =
  'takeaway, takeout, take out, store bought, shop bought, bakery, restaurant, original, classic';
/** Another than this dish, by its kind: 'the takeaway version'. */
export const COMPARED = framed(
  'a {} portion, a {} bowl, a {} serving, the {} one, the {} version, {} version, the {} stuff, a {} one, the {} recipe, {} recipe, the {} kind, {} one, the {} ones, a {} version, the {} thing, {} ones, {} versions',
  phrasesOf(
    'takeaway, takeout, take out, store bought, shop bought, bakery, restaurant, original, classic, regular, normal, usual, old, traditional, boxed, frozen, cafe, packaged, full fat, coffee shop, drive through, my old, supermarket, store, shop, standard, deli, pub, chain, ready made, bought, high street, fast food, full sugar, canteen, petrol station, gas station, delivery, cream, real, diner, food court, freezer, vending machine, ordinary, ready meal, chippy, chip shop, chipper, jarred, tinned, hotel, airport, carvery, corner shop, garage, local, typical, average, leading, branded, big brand, food truck, street, chain, beef, dairy, fancy, posh, meal kit, meal deal, service station, servo, dhaba, mall, outside',
  ),
);

/** Dishes that someone else made: 'a shop flapjack', 'the takeaway curry'. */
export const BOUGHT_DISHES = phrasesOf(
  'traybake, tray bake, dinner, lunch, breakfast, dish, tray, plate, food, flapjack, bar, curry, pizza, burger, loaf, muffin, slice, sandwich, salad, wrap, burrito, cake, bread, cookie, brownie, pie, stew, soup, lasagne, lasagna, shake, latte, pancake, pancakes, muffins, cookies, brownies, bars, burgers, wraps, meal, dal, dahl, korma, noodles, ramen, chili, chilli, katsu, granola, bagel, bagels, doughnut, donut, pasta, rice, mince, crisps, chips, ice cream, yogurt, yoghurt, cheese, mayo, oats, cereal, protein bar, protein bars, chocolate, dressing, pesto, stir fry, kebab, casserole, dessert, cheesecake, crumble',
).flatMap((dish) =>
  framed(
    `a {} ${dish}, the {} ${dish}, your {} ${dish}, {} ${dish}`,
    phrasesOf(
      'takeaway, takeout, store bought, shop bought, bought, shop, bakery, restaurant, coffee shop, cafe, supermarket, typical, regular, normal, standard, ready made, deli, fast food, gas station, petrol station, average, usual, chip shop, high street, service station, canteen, classic, traditional',
    ),
  ),
);

/** Other things than this dish, by what somebody did with them. */
export const OTHERS =
  'i used to buy, we used to buy, i used to get, i always used to buy, used to buy, in a restaurant, in the restaurant, in a cafe, in the cafe, at a cafe, at the cafe, at a restaurant, in the canteen, from the takeaway, at the takeaway, from the chippy, in a coffee shop, in the coffee shop, in a supermarket, from a cafe, at the deli, from the bakery, in the bakery, yours, theirs, the fried, the fried one, the fried ones, the one i grew up on, the one i grew up with, the one we grew up on, the one i used to make, the one my mum made, the one my mum makes, the one from the shop, the ones from the shop, the one from the supermarket, the one you get, the ones you get, the one you buy, the ones you buy, the one from the takeaway, comparable, the real thing, the proper one, the old way, the usual way, my old way, my old recipe, the deep fried one, what you get in';
