import type { Role } from '../language';
import { LEADING } from './verbs';
import { all, framed, phrasesOf, set } from './words';

const SOFT = phrasesOf(
  'approximate, approximates, approximations, approximated, estimates, estimated, an estimate, rough, ballpark, rough estimates, ballpark figures, best guesses',
);

/** What softens all numbers of a row. */
const ALL_ABOUT = [
  ...framed(
    'all values {}, macros are {}, macros {}, the macros are {}, all macros {}, all macros are {}, all {}, all are {}, values are {}, values {}, the values are {}, numbers are {}, the numbers are {}, my numbers are {}, all numbers {}, all numbers are {}, all of these are {}, all of this is {}, all of them are {}, these are {}, these are all {}, these are just {}, everything is {}, all of it {}, all of it is {}, {} macros, {} numbers, {} values, figures are {}, the figures are {}',
    SOFT,
  ),
  ...phrasesOf(
    'approx macros, approx. macros, all roughly, all of it roughly, all approx, all about, approx. values, approx values, approximate values, rough values, est. values, estimated values, around :, roughly :, approximately :, approx :, approx. :, about :',
  ),
];

/** Words that join, part and link. */
export const SMALL_WORDS: [string, Role][] = [
  ...all<Role>('less, fewer, lower, lighter, leaner, down on, shy of, short of, cheaper', {
    cat: 'than',
    against: 'less',
  }),
  ...all<Role>('more, extra, higher, heavier, up on', { cat: 'than', against: 'more' }),
  ...LEADING.flatMap((phrase): [string, Role][] => [
    [phrase, { cat: 'copula' }],
    [phrase, { cat: 'comesTo' }],
  ]),
  ...['is', 'was'].map((be): [string, Role] => [`${be} what ,`, { cat: 'copula' }]),
  ...all<Role>(
    "is giving, it gives, i make it, we hit, we come to, you come to, goes for, it's saying, is saying, i've got, i have got, you'll get, you'll be at, you'd be at, we end on, tallies at, tallies up to, reads, we're talking, we are talking, you're talking, thats at, that's at, it's at, its at, all in all, was about, were about, was around, is just, are just, they are, they were, they've got, it's got, this has, this has got, which has, we land on, i get, i got, i am on, i'm sat at, you're at, you are at, you're on, you are on, you're getting, you're into, we're down to, brings, is only, was only, are only, i'm on, you're on, we have, you have, we've got, you've got, we're up to, i'm up to, hitting, is, are, was, were, it's, that's, is about, =, - >, = >, – >, →, ➜, ➔, :, equals, should be, should read, should say, has, have, got, is like, hits, it is, that is, we're at, we are at, i'm at, i am at, you're looking at, you are looking at, looking at, that makes, it has, will be, gonna be, going to be, would be, runs, is at, are at, is up to, 's at, we're sitting at, is around, was at, is gonna be, is going to be, are gonna be, per bowl is, makes it, takes it to, goes to, says, each one is, we're looking at, we are looking at, weighs, carries, packs, contains, there's, there is, there are, you get, you're getting, we get, we're on, i've had, i have had, they're, those are, costs",
    { cat: 'copula' },
  ),
  ...all<Role>(
    'came down to, comes down to, cooks down to, cooked down to, shrinks to, shrank to, boils down to',
    { cat: 'comesTo' },
  ),
  [',', { cat: 'joiner' }],
  ...all<Role>('and, plus, |, /, ·, •, &, (, ), ;, *, with, –, —, -, +', { cat: 'joiner' }),
  ...all<Role>(
    'so, because, but, since, if, when, while, then, although, though, unless, cause, anyway, now, okay, ok, and then, and so, meanwhile',
    { cat: 'so' },
  ),
  ...all<Role>('because, since, cause, when, while, although, though, unless', { cat: 'reason' }),
  ...all<Role>(
    "in that order, that order, which is, that is, that's, which are, which was, that alone is, which has, which comes to, which adds",
    { cat: 'which' },
  ),
  ...all<Role>(
    "not, isn't, wasn't, without, never, no more, instead of, rather than, in place of, doesn't have, does not have, can not get, do not get, does not get, do not have, did not have, will not get, do not need, does not need, hasn't got, has not got, haven't got, don't have, didn't have, don't get, doesn't get, can't get, cannot get, couldn't get, won't get, aren't, weren't, ain't, don't need, doesn't need, doesn't come to, don't tell me this is, don't tell me it's",
    { cat: 'not' },
  ),
  ...all<Role>(
    'exactly, only, just, somewhere, anywhere, a full, a whopping, a solid, a good, whopping, solid, full, good, literally, even, still, a, an, the, another, of, extra, a cool, a mere, mere, bang on, dead on, precisely, right at, as in, total, all of, to, um, uh, er, like a, something, honest, right around, hit of, dose of, boost of, whack of',
    { cat: 'filler' },
  ),
  ...all<Role>(
    'i, if, for, in, on, you, it, this, to, from, by, because, when, that, they, he, she, my, your, our, please, people, right, okay, exactly, there, here, honestly, of the good stuff, in the end, at the end, even, though, including, without, without it, easy, guys, folks, friends, today, again, now, too, or, is it, total, all in, if you, do, does, depending, after, before, once, obviously, actually, just, we, people, swear, not, a, out, per, as, at, one, each, mine, these, those, which, what, until, max, tops, yeah, yes, sorry, wow, easily, easy, comfortably, happily, nicely, generously, happily, no bother, no problem, no messing, lads, mate, love, eh, yaar, near enough, depending on, thanks, cheers, so there, honestly, though, near, mind, tell you what, believe me, only, in here, in there, somehow, once it, with, good, not bad, give, flat, something, anyway, still, everyone, while',
    { cat: 'small' },
  ),
  ...all<Role>(
    "oven up to, grill up to, it up to, get, gets, get to, crept up to, creeps up to, crept to, creeps to, drifts up to, to, at, @, want, wants, want it at, reads, read, do, hits, says, reach, reaches, is, needs, go to, go, took it to, went to, it to, climbs to, climbed to, go up to, come up to, creep up to, rise to, climb to, carry to, goes up to, went up to, gets up to, climbs up to, comes up to, came up to, carries over to, rises to, going up to, got to, for, should read, should say, should be, on, aim for, reading, mine's reading, is reading, it's reading, showing, is showing, take it up to, turn it up to, crank it up to, whack it up to, up it to, turn it down to, knock it down to, drop it down to, bump it up to, turn the heat up to, set it to, until it hits, till it hits, pull em at",
    { cat: 'lead' },
  ),
  ...all<Role>(
    'of them, of those, of these, of em, of which, of it, of that, of this, of this stuff, of this one',
    { cat: 'ofThem' },
  ),
  ...all<Role>(
    'into this, into it, into the, in here, in there, goes in, went in, into that, in this one',
    { cat: 'into' },
  ),
  ...all<Role>(
    'per gram, a gram, each gram, for each gram, for every gram, per gram of fat, per kilo, per hundred calories, per 100 calories, per 100 kcal, per one hundred calories, per calorie, per kcal, for every, for each hundred calories, per hundred kcal',
    { cat: 'perUnit' },
  ),
  ...all<Role>(
    "i ate, i eat, ate, eat, had, i had, i'll have, having, i'm having, have, i have, i take, you eat, you have, if you eat, if you have",
    { cat: 'eat' },
  ),
  ...all<Role>('for, serves', { cat: 'serveTitle' }),
  ...all<Role>('than', { cat: 'thanWord' }),
  ...all<Role>('who, that asked, asking, watching, on camera', { cat: 'who' }),
  ...all<Role>('version, one, ones, recipe', { cat: 'kindOf' }),
  ...all<Role>(
    'cheap, not cheap, dirt cheap, cheaper, the big one, the main cost, the main expense, the big spend, expensive, dear, pricey, costly, dearest, cheapest, priciest, most expensive, on sale, on special, on offer, reduced, reduced sticker, yellow sticker, cost the most, a bargain, a splurge, the splurge, most of it, most of that, the bulk of it, most of the cost, most of the money, next to nothing, hardly anything, nearly nothing',
    { cat: 'dear' },
  ),
  ...all<Role>("worth of, 's worth of, worth", { cat: 'worth' }),
  ...all<Role>(
    'normal, regular, usual, typical, standard, average, traditional, takeaway, takeout, shop bought, store bought, restaurant, ready made, frozen, supermarket, high street, fast food, jarred, tinned, full fat',
    { cat: 'usual' },
  ),
  ...all<Role>('per', { cat: 'per' }),
  ...all<Role>(
    'at, @, up at, up there at, in strong at, on the high side at, on the low side at, high at, low at, lower at, higher at, down at, in at, right down at, way down at, way up at, right up at, is up at, is down at, are up at, are down at, sat at, on at, down to, is down to, are down to, was down to, up to, back up to, back down to',
    { cat: 'at' },
  ),
  ...all<Role>(
    "not call it, not call this, not call that, wouldn't call it, wouldn't call this, don't call it, can't call it, cannot call it",
    { cat: 'called' },
  ),
  ...all<Role>('as, of, in, in the, on, on the, worth of', { cat: 'asWord' }),
  ...all<Role>(
    'come from, comes from, came from, is from, are from, from, is, are, come from the, is the, are the, of it is, of them are, of that is, from the',
    { cat: 'comesFrom' },
  ),
  ...all<Role>('split, macro split, ratio, macro ratio, macro percentages', { cat: 'split' }),
  ...all<Role>('x, ×, times', { cat: 'multiplied' }),
  ...ALL_ABOUT.map((phrase): [string, Role] => [phrase, { cat: 'allAbout' }]),
  ...all<Role>(
    'down from, up from, used to be, it used to be, used to have, started at, was once, went from, go from, goes from, gone from, drops from, dropped from, going from, took it from, changed from, changed it from',
    { cat: 'change' },
  ),
  ...all<Role>(
    "i weigh, i weighed in at, he weighs, she weighs, i'm down to, my weight is, i lost, i've lost, i ran, ran, i run, i walked, i cycled, cycled, i swam, swam, jogged, marathon, half marathon, the gym, i rowed, my weigh in, lost, i gained, gained, body weight, bodyweight, i lift, i deadlift, lifted, squat, bench, deadlifted, my dog weighs, the cat weighs, carry, carrying, drop, dropped",
    { cat: 'self' },
  ),
  ...all<Role>(
    'in, since, of, from, until, by, back in, year, summer, january, february, march, april, may, june, july, august, september, october, november, december, circa',
    { cat: 'yearWord' },
  ),
  ...all<Role>(
    'my pan, my pot, my oven, my tin, my tray, my air fryer, my mixer, my grill, my scales, camera, lens, tripod, knife, knives, scale, app, book, subscription, membership, mic, microphone, blender, merch, apron, thermometer, coupon, discount, code, processor, light, lights, battery, batteries, phone, sponsor, course, gear, filmed, rent, frying pan, sheet pans, ticket, fryer, mixer, sd card, memory card, hard drive, gimbal, hoodie, mug, cookbook, shipping, postage, donation, gas bill, electricity, laptop, software, editing, bulb, chopping board, cutting board, board, pan set, thrift store, price of a, price of one, the price of, charity shop, op shop, second hand, secondhand, in the sale, in a sale, on sale at, link below, linked below, if you need one, if you want one, chest freezer, freezer, fridge, new pot, new pan, new tin, new tray, new bowl, new dish, kitchen shop, dutch oven, casserole pot, wok, kettle, thermos, lunchbox set, spatula, whisk, timer, air fryer, airfryer, slow cooker, pressure cooker, rice cooker, food processor, stand mixer, blade, subscription, inch, inches, centimetres, centimeters, bus, train, taxi, parking, petrol, fuel, rent, haircut, jumper, shoes, flight, flights, cinema, gym, the bowls were, bowls were, plates were, cost her, cost him, cost them, ring light, drone, monitor, mouse, keyboard, backdrop, tea towel, tea towels, grinder, peeler, grater, blender jug, sieve, colander, baking tray was, tin was, pan was, pot was, mandoline, chair, table cloth, tablecloth, to park, to get in, for parking, entry, rod, reel, boots, coat, tent, bike, van, trainers, sofa, subscribe, delivery fee, tip, parking machine, rents, propane, propanes, a tank, permit, generator, electric bill, the bills, deposit, on shopping, on groceries, weekly shop, food shop, the big shop, gas is, gas was, electric is',
    { cat: 'gear' },
  ),
];

/** Words with a full stop that ends no sentence. */
export const SHORTENED = set(
  'approx ca min mins max tbsp tsp oz lb lbs vs incl est no fl hr hrs sec in ep vol',
);
