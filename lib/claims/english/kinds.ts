import type { Role } from '../language';
import { conjugated } from './verbs';
import { all, framed, list, phrasesOf } from './words';

/** Words of ovens, thermometers, clocks and tables: what a number without a nutrient is about. */
export const KINDS: [string, Role][] = [
  ...all<Role>(
    "board to plate in, to plate in, to bowl in, to table in, door to table in, done and dusted in, on the plate in, plated up in, in and out in, ready in, ready within, on the table in, done in, finished in, on the table within, start to finish in, dinner in, lunch in, breakfast in, done within, on your plate in, on a plate in, ready to eat in, from fridge to table in, fridge to fork in, pan to plate in, plated in, eating in, you're eating in, eaten in, fed in, sorted in, on plates in, fridge to table in, start to plate in, dinner's ready in, tea's ready in, tea on the table in, sat down eating in, served in, bowl to mouth in, table in, you're done in, you are done in, comes together in, came together in, can do it in, could do it in, do this in, managed it in, pull it off in, get it done in, have it done in, have it on the table in, knock it up in, knock it out in, throw it together in",
    { cat: 'time', as: 'soon' },
  ),
  ...all<Role>(
    "oven, oven's, ovens, preheat, preheated, preheat to, preheating, pre heat, air fryer, air fry, airfryer, grill, broiler, roast, roasted, bake, baked, bakes, baking, roasting, heat the oven, turn it down, turn it up, turn the oven down, turn the oven up, turn it back up, knock it down, take it up to, turn it up to, turn it down to, crank it up to, whack it up to, whack it up, whack it to, knock it back to, knock it down to, drop it to, drop it down to, bump it up to, turn the heat up to, turn it to, set it to, set it at, under the grill, low oven, hot oven, moderate oven, slow oven, oven at, into the oven, in the oven, crank it, crank it up, drop it to, drop it down, bump it up, bump it, oven down, oven up, oven to, my oven",
    { cat: 'place', place: 'oven' },
  ),
  ...all<Role>(
    "in the thigh, in the breast, in the thickest, in the thickest part, in the thickest bit, in the deepest part, by the bone, in the middle, in the centre, middle's, centre's, center's, core's, inside's, thickest part's, inside, middle, center, centre, thermometer, thickest, thickest part, probe, internal, internally, core, internal temp, internal temperature, done at, cooked at, cook it to, cook to, cooked to, cook them to, pull it at, pull them at, pulled it at, pulled them at, pulled mine at, pulled it out at, took it out at, pull it off at, pull at, core temperature, inside temp, take it to, bring it to, safe at, temps at, temped at, temp, probes at, reads, it hits, reaches, reading, mine's reading, showing, pull em at, pull em off at, pull em, pull it, pull it out at, take it out at, take them out at, out at, done when it hits, done when it's, until it hits, until it reaches, until it reads, till it hits, an internal of, internal of, internal temp of, internal temperature of, an internal temperature of, core temp of, a core of, inside of, carries to, safe temp",
    { cat: 'place', place: 'inside' },
  ),
  ...all<Role>(
    'fridge, freezer, room, room temp, room temperature, water, oil, pan temperature, outside, kitchen, fridge at, oil to, oil at, milk to, the water, surface, weather, out here',
    { cat: 'place', place: 'elsewhere' },
  ),
  ...all<Role>('gas mark, gas', { cat: 'gas' }),
  ...all<Role>(
    'american, americans, in america, the states, the us, stateside, across the pond, in europe, europeans, european, british, the uk, the rest of the world, everyone else, imperial, metric, old money, new money',
    { cat: 'scale' },
  ),
  ...all<Role>(
    "fan, convection, fan oven, fan assisted, fan forced, (fan), if it's a fan, if it is a fan, if it's a fan one, if it is a fan one, if it is fan, if yours is fan, if its a fan, if it's fan, if you have a fan, if you've a fan, if you've got a fan, if you have a fan oven, if yours is a fan, if it's a fan oven, with the fan on, with the fan, in a fan, in a fan oven, if you've the fan, if you have the fan, if you've got the fan, if you've a fan on, with fan, is with fan, with fan then, is with fan then, on fan, for fan, for a fan, for a fan oven, on convection, with a fan, fan on",
    { cat: 'fan' },
  ),

  ...all<Role>(
    "the whole thing's, whole thing's, the whole job's, the whole job is, the whole job takes, whole job takes, the whole lot takes, the whole thing is, whole thing is, all done in, start to end in, cooked and on the table in, from nothing to dinner in, board to plate in, to plate in, to bowl in, to table in, door to table in, done and dusted in, on the plate in, plated up in, in and out in, ready in, ready within, on the table in, done in, finished in, on the table within, start to finish in, total time, in total, total, all in, takes me, this took me, it took me, took me, dinner in, lunch in, breakfast in, done within, on your plate in, on a plate in, start to finish, ready to eat in, comes together in, came together in, in just, from fridge to table in, plated in, start to plate in, from start to finish, start to plate, from start to plate, fridge to fork, from fridge to fork, pan to plate, from pan to plate, cold pan to plate, from cold pan to plate, you're done in, you are done in, whole thing takes, the whole thing took, whole thing took, the whole thing takes, takes about, takes you, eating in, you're eating in, table in, can do it in, could do it in, do this in, managed it in, pull it off in, get it done in, have it done in, have it on the table in, knock it up in, knock it out in, throw it together in",
    { cat: 'time', as: 'ready' },
  ),
  ...all<Role>(
    "from fridge to fork, fridge to fork, from cold pan to plate, pan to plate, start to plate, it is in total, it is all in, it is all told, it is altogether, it takes in total, it is start to finish, job, from opening the fridge, from the fridge, from cold, from start, from nothing, to sitting down, from the packet, from a cold start, start to finish, dinner, lunch, breakfast, job done, from start to end, end to end, soup to nuts, all up, tea, midweek dinner, midweek meal, weeknight meal, and you're eating it, and you're sat down, and it's done, and it's on the table, and it's on your plate, and tea's ready, and you're fed, from fridge to plate, fridge to table, fridge to plate, all told, supper, meal, flat, all in, in total, total, from start to finish, dish, recipe, weeknight dinner, to the table, door to table, from scratch, door to door, all told, beginning to end, soup, bowl, tray bake, traybake, dinners, lunches, meals, dessert, snack, to make, from fridge to table, end to end, altogether, and it is on the table, and dinner is on the table, you've got dinner, you have dinner, dinner is ready, dinner is done, dinner's ready, dinner's done, and done, and it's ready, it's on the table, and you're done, and you are done, and you're eating, from the fridge door, including",
    { cat: 'timeBehind', as: 'ready' },
  ),
  ...all<Role>(
    "sun is up for, the sun is up for, the light lasts, it is light for, i have exactly, i've got exactly, stood in the aisle for, stood there for, in the aisle for, i'm squatting in, squatting in, tastes like, taste like, looks like, like it took, last, final, every, after, for the last, for the first, the last, the first, in the last, within, back in, see you in, keeps for, keeps, lasts, last for, lasts for, another take of, wait, battery, check it at, check at, check on it at, check them at, look at it at, turn it at, flip it at, stir it at, have a look at, two seconds, give me a, give us, takes mine, be back in, hold on for, on hold for, queued for, drove for, drive for, on the bus for, chatting for, rambling for, talking for, filming for, stand for a, stay good for, will keep for, they'll keep for, it'll keep for, keeps well for, a break of, break for, video is, timer at, at minute, until minute, give me, once every, for the final, the final, skip the, skip to, halfway at, by minute, about every, after about, roughly every, after around, walked, ran, run, freeze for, frozen for, keep for, good for, spent, edit took, edited for, talked for, waited, sleep, slept, reheat for",
    { cat: 'time', as: 'none' },
  ),
  ...all<Role>(
    "left, i'll be back, i will be back, ago, break, in the fridge they keep, video, videos, left on, in i, in you, in the video, later, of footage, shift, shifts, old, late, early, away, of your life, of my life, drive, walk, run, long video, of talking, off camera, of prep footage, to film, to edit, to shoot, sleep, left of, of daylight, of the good light, to park, late for, to set up, to upload, to drive, to get here, to clean up, quicker, faster, slower, less than, more than, clip, per week, a week, of editing, b roll, in flip, in turn, of audio, intervals, shorter, longer, sooner, and flip, to go, of sleep, till, into, from now, earlier, workout, warm up, in and, in and it, in now, in so far, to heat up, to preheat, to warm up, to come up to temperature, to come up to temp, to come to temperature, to get hot, to get going, to peel, on the phone, to the shop, to the shops, on the bus, in traffic, on the train, round trip, of chat, of rambling, of waffle, of my time, of waiting, of sunlight, of sun, of sunshine, of light, of rain, into the video, into filming, behind schedule, gym, to wash up, of washing up, to clean, to park",
    { cat: 'timeBehind', as: 'none' },
  ),
  ...all<Role>(
    'before dinner, before you, before serving, before eating, before we, before i, before it, before slicing, before cutting',
    { cat: 'timeBehind', as: 'before' },
  ),
  ...all<Role>(
    "in the oven, on the hob, in the pan, under the grill, in the air fryer, in the airfryer, in the fryer, in the fridge, in the freezer, on the stove, on the heat, in the pot, under the broiler, and it's done when, and it is done when, and they're done when, and they are done when, until it's done, off the heat, on the barbecue, on the grill, in the slow cooker, in the microwave, on low, on high",
    { cat: 'timeBehind', as: 'place' },
  ),
  ...all<Role>(
    'a side, per side, each side, on each side, a side on, on both sides, either side, both sides, a side for, on either side, / side',
    { cat: 'timeBehind', as: 'side' },
  ),
  ...all<Role>(
    "gave it, gave them, gave mine, i give it, i give them, bake, baked, roast, roasted, grilled, air fry, air fried, simmered, poached, steamed, fried, prep, cook, cooks, rest, simmer, chill, marinate, fry, boil, sear, lid off, lid on, soak, prove, proof, rise, cool, prep time, cook time, resting time, let it sit, sit, steam, saute, sauté, poach, toast, foil on, foil off, foil on for, foil off for, lid off for, lid on for, covered for, uncovered for, from frozen for, from frozen, bakes, uncovered, covered, hands on, hands on time, active time, chop, cooking, cooking's, cooking time, baking time, chilling time, stir, whisk, knead, mix, drain, brown, reduce, infuse, bubble, low simmer, rest it, resting, simmering, let it rest, let them rest, let it cool, leave it, leave them, leave it in the tin, leave it in the tin for, leave it in the pan for, leave it to rest for, only want, only need, only wants, only needs, blanch, grill it, fry it, fry them, cook it, cook them, bake it, boil it, simmer it, steam it, cool it, chill it, roast it, rest them, prove it, in it goes for, in for, in they go for, pop it in for, bung it in for, sling it in for, back in for, on the hob for, in the oven for, under the grill for, sizzle, sweat, temper, bloom, marinade, par boil, parboil, pressure cook, slow cook, stew, braise, char, crisp, set, freeze, thaw, microwave, blitz, blend",
    { cat: 'time', as: 'action' },
  ),

  ...all<Role>(
    "that'll do, thatll do, this does, that does, it does, it'll do, it will do, does us, stretch to, stretches to, stretched to, stretch it to, will stretch to, enough there for, plenty for, plenty there for, enough in there for, enough food for, enough in it for, fills, filled, fill, dish it into, dished into, dished up into, dish it up into, portioned into, portion it out into, portion this into, box it up into, boxed into, boxed up into, bag it up into, ladle into, ladle it into, ladled into, goes into, pack it into, packed into, share it between, share it into, sharing between, splitting this between, splitting it between, splitting between, split that between, dividing by, dividing it by, dividing between, cut by, goes between, between the, serves, feeds, servings :, portions :, serves :, servings, ( for, feeds a family of, a family of, family of, enough for a family of, recipe ( for, feed, enough for, serve, feeds a good, serves a good, does for, enough to feed, feeding, that'll feed, that'll serve, will feed, will serve, split over, divided over, spread over, shared over, split it in, split it, split this, split that, split in, split, divided, divided by, divided between, divided among, divided in, divide by, divide that by, divide it by, divide it between, shared among, shared by, shared out between, share between, goes round, dinner for, dinners for, tea for, supper for, lunch for, breakfast for, meal for, recipe for, fed, feeding, divides into, split between, shared between, split among, splits between",
    { cat: 'serve', as: 'portion' },
  ),
  ...all<Role>(
    'is what i cut it into, is what i get, is what you get, is what it makes, is what i got, is what we got, is how many i get, out of it, out of this, out of that, out of one pot, out of the pot, out of one tray, out of the tray, out of that tray, out of one batch, out of the batch, out of this batch, out of one tin, from one pot, from one tray, from the one pot, from one batch, from this batch, from a single batch, from the pot, from this pot, from the tray, out of that pot, out of this pot, out of this recipe, from this recipe, out of the lot, out of these, in it, in the pot, in the tray, in the tin, from it, off this, off one tray, out the pot, out of a batch',
    { cat: 'outOf' },
  ),
  ...framed(
    'out of a {}, out of one {}, out of the {}, out of this {}, out of that {}, out of each {}, from a {}, from one {}, from this {}, out of my {}',
    phrasesOf('pot, tray, batch, tin, pan, loaf, recipe, cake, pie, sheet, dish'),
  ).map((phrase): [string, Role] => [phrase, { cat: 'outOf' }]),
  ...all<Role>('fed, served, ways, hungry people, hungry adults, hungry kids, fed easily', {
    cat: 'serveBehind',
    as: 'portion',
  }),
  ...all<Role>(
    "end up with, ended up with, ends up with, i end up with, you end up with, came out with, comes out with, turned into, turns into, i'm getting, im getting, i am getting, we're getting, you're getting, you'll have, you have, you've got, i've got, that's, that is, we have, we've got, yielded, got me, gives us, gave me, gave us, gave you, gives, gives you, gives me, we get, you get, i get, i got, get, got, we got, getting, we are getting, that makes, i've, we've, gets me, gets you, gets us, there's, there is, there are, you'll get, i'll get, out come, comes out as",
    { cat: 'serve', as: 'any' },
  ),
  ...all<Role>('makes, make, made, yields, yield, made', {
    cat: 'serve',
    as: 'piece',
  }),
  ...all<Role>(
    'cut mine into, i cut mine into, cut these into, i cut these into, slice these into, i sliced it into, i sliced this into, slice mine into, slice it, slice this, cut it, cut this, cut into, cut in, cuts into, cuts in, slice into, sliced into, cut it into, cut this into, slices into, cut that into, slice it into, slice this into, cut them into, cut in to, i cut it into, i cut this into, cut the lot into, portion it out into, score it into, slice that into, cut up into, cut it in to, cut it in, cut this in',
    { cat: 'serve', as: 'slice' },
  ),
  ...all<Role>(
    'split into, divide into, divided into, splits into, divide it into, portion into, split it into, portioned into, split this into, portion it into, divide this into, i split it into',
    { cat: 'serve', as: 'portion' },
  ),
  ...all<Role>(
    'form, shape, shape up, roll into, shape into, form into, shaped into, rolled into, roll it into, shape it into, shape them into, press into, scoop into, scooped into',
    { cat: 'serve', as: 'piece' },
  ),

  ...conjugated(
    'roll rolls rolled rolling, shape shapes shaped shaping, form forms formed forming, ball balls balled balling, divide divides divided dividing, portion portions portioned portioning, scoop scoops scooped scooping, flatten flattens flattened flattening',
    'it, them, into, the, this, each, out, in, to, everything',
  ).map((phrase): [string, Role] => [phrase, { cat: 'shape' }]),
  ...all<Role>(
    'weighed, weigh, weighs, weighed out, finished weight, on the scale, weighing, came out at, weighs in at, serving size, portion size, final weight, weighed in at, cooked weight, total weight, weight',
    { cat: 'weigh' },
  ),
  ...all<Role>(
    'used, use, using, have put, i put, we put, i have put, added, i add, adding, put in, threw in, went in, go in, goes in, added in, pour in, poured in, need, needs, take, stir in, stirred in, tip in, chuck in, in goes, in go, in went, add, mix in, mixed in, plus, with, you need, fold in, folded in, throw in, then',
    { cat: 'use' },
  ),
  ...[
    '',
    ' the',
    ' my',
    ' your',
    ' our',
    ' some',
    ' in the',
    ' back the',
    ' down the',
    ' back on the',
    ' down on the',
  ].flatMap((the) =>
    framed(
      `{}${the}`,
      list(
        'halve halved halving double doubled doubling cut cutting reduce reduced reducing swap swapped melt melted dissolve dissolved weigh weighed sprinkle sprinkled caramelise caramelised caramelize caramelized use used using add added adding whisk whisked beat beating cream creamed rub dialled dialed dropped upped pulled rinse rinsed',
      ),
    ).map((phrase): [string, Role] => [phrase, { cat: 'handled' }]),
  ),
  ...all<Role>(
    'ones, tub, tubs, pack, packs, packet, packets, bag, bags, box, boxes, bottle, bottles, block, blocks, tin, tins, can, cans, pouch, jar, jars, pot, pots, ball, balls, carton, cartons, sack, container, punnet, tray of, size, sized',
    { cat: 'pack' },
  ),
  ...all<Role>(
    'goes in, go in, went in, the whole, all of it, whole, entire, the entire, all the, the full, use it all, every bit of it',
    { cat: 'allOfIt' },
  ),
  ...all<Role>(
    'at the store, at the shop, at the shops, at the supermarket, at the grocery store, at the market, at the till, at the checkout, at the butcher, at the corner shop, on the receipt, on my receipt, from the store, from the shop, from the supermarket, to buy, i paid, we paid, paid, i spent, we spent',
    { cat: 'bought' },
  ),
  ...all<Role>(
    'i spent, we spent, it cost me, it cost, that cost, this cost, i paid out, cost, costs, cost me, costs me, came to, comes to, paid, pay, spent, priced at, for under, price, cost us, costing, works out at, works out to, rang up at, rings up at, is costing me, costing me, is costing, costs you, cost you, set me back, sets you back, sets me back, set you back, stands me, stood me, ran me, runs me, runs you, cost us about, paying, i paid, we paid, total cost, budget, was only, were only',
    { cat: 'cost' },
  ),
  ...all<Role>(
    'i spent, we spent, spent, it cost me, it cost, that cost, this cost, i paid out, cost, costs, cost me, costs me, paid, i paid, we paid, pay, paying, you pay, priced at, price, cost us, costs us, costing, is costing, costs you, cost you, set me back, sets you back, sets me back, set you back, total cost, price tag, i got charged, bill, the bill, bill was, the damage, money wise, price wise, cost wise, charged me',
    { cat: 'paid' },
  ),
  ...all<Role>(
    'charge, charges, charged, charging, charge you, charges you, charge me, want, wants, wanted, asks, asking, sell it for, sells it for, sell them for, sells them for, sells for, selling it for, sell one for, would cost you in, costs in the',
    { cat: 'charge' },
  ),
  ...all<Role>(
    'another, back in, goes back in, back in the oven, back in it goes, needs, so back, not there yet, not yet, carry over, carryover, carry on cooking, keep climbing, keeps climbing, keep rising, so it goes back, give it, so another, more minutes, and climbing, getting there, nearly there, so in it goes, almost there',
    { cat: 'back' },
  ),
  ...all<Role>(
    'alone, on its own, on its tod, on their tod, on its lonesome, by itself, by themselves, on their own, all by itself, just the',
    { cat: 'alone' },
  ),
  ...all<Role>(
    'you add, it adds, you are adding, adds, adds another, gives, gives you, gives it, gives us, bring, bring another, has another, have another, gets you, provides, provide, give you, give another, add up to, puts in, kicks in, chuck in another, adds about, add another, brings, brings another, gives another, that adds, contributes, is another, on top of that is, puts on another, chips in, throws in, accounts for',
    { cat: 'adds' },
  ),
  ...[
    ...conjugated(
      'add adds added adding, bring brings brought bringing, contribute contributes contributed contributing, provide provides provided providing, chip chips chipped chipping in, give gives gave giving',
    ),
    ...conjugated(
      'give gives gave giving, get gets got getting',
      'you, us, me, it, you another, us another, it another',
    ),
    ...conjugated(
      'bring brings brought bringing, add adds added adding',
      'you, in, in another, another, about, on, on another, you another',
    ),
    ...conjugated(
      'put puts put putting, kick kicks kicked kicking, chip chips chipped chipping, throw throws threw throwing',
      'in, in another',
    ),
    ...conjugated('account accounts accounted accounting', 'for'),
    ...conjugated('carry carries carried carrying', 'another'),
  ].map((phrase): [string, Role] => [phrase, { cat: 'adds' }]),
];
