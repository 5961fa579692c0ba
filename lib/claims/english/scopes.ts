import type { Role } from '../language';
import { BOUGHT, BOUGHT_DISHES, COMPARED, OTHERS } from './bought';
import { DAY_SCOPES } from './day-scopes';
import { EACH, plural, PORTION, SLICE, VESSELS, WHOLE } from './parts';
import { ALL_THE, halfOf, ofPart, wholeOf } from './part-scopes';
import { scope } from './scope-phrases';
import { all, framed, phrasesOf } from './words';

/** How many there are, where all are meant; and portions as subjects without an article. */
const COUNTED =
  'two, three, four, five, six, seven, eight, nine, ten, twelve, 2, 3, 4, 5, 6, 8, 9, 10, 12';
const BARE_PARTS = phrasesOf('portion, serving, bowl, plate, portions, servings');

/** What a number is said of. */
export const SCOPES: [string, Role][] = [
  ...ALL_THE,
  ...scope(
    phrasesOf(
      'total for the shop, total for the lot, grand total, the grand total, total cost, total bill, total spend, the total, the total cost, total damage, the damage',
    ),
    'whole',
    'subject',
  ),
  ...scope(phrasesOf('the lot, for the lot, the lot of it, for the lot of it'), 'whole', 'free'),
  ...scope(
    phrasesOf(
      "day :, the day :, full day :, day =, today's total, today's eating, today's food, today's calories, my eating today, the whole of today, all of today, finished the day, finish the day, ended the day, end the day, closes the day, day finishes, day ends, the day ends, the day finishes, the day's eating, the day's numbers, today's numbers, in the day, day's food, my total for today, grand total for the day, full day done, full day's",
    ),
    'day',
    'free',
  ),
  ...scope(phrasesOf('serving size, portion size'), 'portion', 'free'),
  ...scope(
    phrasesOf(
      '¼, ⅓, ¾, ⅔, 1/4, 1/3, a quarter, a third, one third, one quarter, a sixth, a fifth, an eighth, a tenth, two thirds, three quarters',
    ),
    'unknown',
    'subject',
  ),
  ...scope(phrasesOf('this :, homemade :, mine :, ours :, home made :'), 'dish', 'free'),
  ...scope(wholeOf(WHOLE), 'whole', 'free'),
  ...scope(phrasesOf('the whole of it, the whole of this, the whole of that'), 'whole', 'free'),
  ...scope(
    framed(
      'for the {}, in the {}, for a {}, in that {}, in this {}, for this {}, for that {}',
      VESSELS,
    ),
    'whole',
    'behind',
  ),
  ...scope(
    framed('for the {}', phrasesOf('loaf, cake, pie, pizza, quiche, traybake, cheesecake')),
    'whole',
    'behind',
  ),
  ...scope(framed('the {}, this {}, a {}', VESSELS), 'whole', 'subject'),
  ...scope(
    phrasesOf(
      'per batch, per tray, per pot, per loaf, / tray, / batch, / pot, per recipe, per pan',
    ),
    'whole',
    'free',
  ),
  ...scope(
    phrasesOf(
      'everything you see here, everything on this plate, everything here, everything in this bowl, everything together, all of them, all of these, everything in it, everything in this pot, everything in this, the lot of it, for the lot of it, all of it, all of this, for everything, the lot, for the lot, all told, for all of it, the whole lot, the whole shebang, the full batch, the whole caboodle, the whole kit and caboodle, the whole jing bang, the full whack, the whole bally lot, the entire lot, everything in the pot, everything in the pan, everything in the tray',
    ),
    'whole',
    'free',
  ),
  ...scope(
    phrasesOf(
      'in total, altogether, total, totals, in all, all in, overall, all up, together, all together, combined, all of it together, the lot together, put together',
    ),
    'whole',
    'behind',
  ),
  ...scope(halfOf(WHOLE), 'half', 'free'),
  ...scope(
    phrasesOf(
      'half of it, half of this, one half, half of the whole thing, half of everything, halve it, if you halve it, halved, split in two, eat half, if you eat half, if you have half',
    ),
    'half',
    'free',
  ),
  ...scope(phrasesOf('half, the half, your half, my half'), 'half', 'subject'),
  ...scope(
    phrasesOf('in my half, in your half, for my half, in each half, per half, in one half'),
    'half',
    'behind',
  ),
  ...scope(
    framed('half a {}, half the {}, half of a {}, ½ {}, ½ a {}, a half {}, half {}', [
      ...PORTION,
      ...SLICE,
      ...EACH,
    ]),
    'unknown',
    'free',
  ),
  ...scope(
    framed(
      'a quarter of the {}, quarter of the {}, a third of the {}, two thirds of the {}, three quarters of the {}, a fifth of the {}, a sixth of the {}, an eighth of the {}, a tenth of the {}, ¼ {}, ⅓ {}, a third of a {}, a quarter of a {}, a quarter {}, ¼ of the {}, ⅓ of the {}, ¾ of the {}, ⅔ of the {}',
      [...WHOLE, ...PORTION],
    ),
    'unknown',
    'free',
  ),
  ...scope(
    framed(
      "a double {}, double {}, a kid's {}, a kids' {}, a child's {}, the kid's {}, the kids' {}, a toddler's {}, an extra {}",
      phrasesOf('portion, serving, helping, plate, bowl, slice'),
    ),
    'unknown',
    'free',
  ),
  ...scope(
    phrasesOf(
      'half of one, half of each, half of each one, half a one, a quarter of one, a third of one',
    ),
    'unknown',
    'free',
  ),
  ...scope(
    phrasesOf(
      "that's everything, that is everything, this is everything, that's the lot, that is the lot, that's all of it, that's the whole lot",
    ),
    'whole',
    'behind',
  ),
  ...scope(framed('all {}, all {} of them, all {} of these', phrasesOf(COUNTED)), 'whole', 'free'),
  ...scope(
    framed(
      'both {}, both {} together, both of the {}',
      [...PORTION, ...SLICE, ...EACH].map(plural),
    ),
    'whole',
    'free',
  ),
  ...scope(framed('{}', [...BARE_PARTS]), 'portion', 'subject'),
  ...scope(['slice'], 'slice', 'subject'),
  ...scope(
    framed(
      '{} of this, {} of that, {} of it',
      phrasesOf('a hundred grams, hundred grams, 100 g, 100 grams'),
    ),
    'per100g',
    'subject',
  ),
  ...scope(
    phrasesOf(
      'half of one of them, two of them, two of those, two of these, three of them, three of those, three of these, four of them, both of them, 2 of them, 3 of them, for two of them, a third of it, a quarter of it, a fifth of it, one fifth of it, a tenth of it, a third of this, a quarter of this, a fifth of this, five of them, six of them, five of these, four of these, four of those, a couple of them, a couple of these, a pair of them, a pair of these, half a portion, a sixth of it, an eighth of it, two thirds of it, three quarters of it',
    ),
    'unknown',
    'free',
  ),
  ...scope(
    [
      ...framed('a {} and a half, one and a half {}, 1.5 {}, 1½ {}', [
        ...PORTION,
        ...SLICE,
        ...EACH,
      ]),
      ...framed(
        'one and a half {}, two and a half {}',
        [...PORTION, ...SLICE, ...EACH].map(plural),
      ),
    ],
    'unknown',
    'free',
  ),
  ...ofPart(PORTION, 'portion'),
  ...ofPart(SLICE, 'slice'),
  ...ofPart(EACH, 'each'),
  ...scope(
    phrasesOf(
      'per person, a head, per head, for one person, a person, for one, pp, p.p., / person, / head',
    ),
    'portion',
    'free',
  ),
  ...scope(phrasesOf('per piece, a piece, the piece, / piece, / each, ea'), 'each', 'behind'),
  ...scope(
    phrasesOf(
      'for one of them, for one of these, for one of those, each, apiece, a pop, a go, each one, each of them, every one, every single one, one of them, one of these, one of those, each of these, each of those',
    ),
    'each',
    'counted',
  ),
  ...scope(
    phrasesOf(
      'per 100 g, per 100g, per hundred grams, per 100 grams, per 100 ml, per hundred, / 100 g, / 100 ml, per one hundred grams, per 100, for every 100 g, for every hundred grams, a hundred grams of it, in 100 g, for 100 g, in a hundred grams, in 100 grams, 100 g =, 100 grams =, 100 ml =, 100 g :, 100 grams :, 100 ml :, 100 g contains, 100 g has, 100 g is, 100 grams contains, 100 grams has, 100 grams is, a hundred grams has, a hundred grams is, 100 g of this is, 100 g of it is, 100 grams of this is, a hundred grams of this is, hundred grams of this is, hundred grams of it is, a hundred grams of it is, per hundred g, per a hundred grams, for a hundred grams',
    ),
    'per100g',
    'free',
  ),
  ...DAY_SCOPES,
  ...COMPARED.map((phrase): [string, Role] => [
    phrase,
    { cat: 'scope', scope: 'compared', link: 'free', against: 'itsOwn' },
  ]),
  ...BOUGHT_DISHES.map((phrase): [string, Role] => [
    phrase,
    { cat: 'scope', scope: 'compared', link: 'free', against: 'itsOwn' },
  ]),
  ...all<Role>(OTHERS, {
    cat: 'scope',
    scope: 'compared',
    link: 'free',
    against: 'itsOwn',
  }),
  ...framed('{}, the {}', phrasesOf(BOUGHT)).map((phrase): [string, Role] => [
    phrase,
    { cat: 'scope', scope: 'compared', link: 'subject', against: 'itsOwn' },
  ]),
  ...all<Role>(
    'against, versus, vs, vs., compared to, compared with, as opposed to, rather than the',
    {
      cat: 'scope',
      scope: 'compared',
      link: 'ahead',
      against: 'itsOwn',
    },
  ),
  // Ends what was said of another thing, and no part.
  ...scope(
    phrasesOf(
      'it cost me, it costs me, it cost us, this cost me, this costs me, i paid, were at, were on, we are at, and this is, but this is, whereas this is, and this has, but this has, this is, this has, and this comes in at, this comes in at, and this comes to, but this comes to',
    ),
    'dish',
    'ahead',
  ),
  ...scope(
    phrasesOf(
      'mine, this one, ours, my version, this version, mine here, this one here, our version, this recipe, this dish, my one, this whole recipe',
    ),
    'dish',
    'free',
  ),
];
