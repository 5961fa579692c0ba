import type { Role } from '../language';
import { scope } from './scope-phrases';
import { all, framed, phrasesOf } from './words';

/** Where dishes of others are had. */
const PLACES =
  'takeaway, takeout, shop, corner shop, supermarket, bakery, restaurant, cafe, café, coffee shop, pub, hotel, canteen, petrol station, gas station, service station, vending machine, chippy, chip shop, deli, diner, drive through, drive thru, food court, food truck, cinema, airport, garage, gym, school canteen, school, work canteen, hospital canteen, meal deal, ready meal, chain, high street, street stall, market stall, stall, stadium, train, buffet, freezer aisle, carvery, freezer section, kiosk, bistro, burger place, pizza place, kebab shop, sandwich shop, noodle bar, juice bar, salad bar, dining hall';

/** Who else makes it. */
const OWNERS =
  'mum, mom, mam, nan, nana, gran, grandma, granny, mother, mate, sister, brother, auntie, aunt, uncle, nonna, abuela, friend, neighbour, neighbor, flatmate, housemate, boss, roommate, mother in law, grandmother, colleague';

/** Dishes of others by who makes them and where they are had (common practice, no source). */
export const ELSEWHERE: [string, Role][] = [
  ...all<Role>(PLACES, { cat: 'elsewhere', as: 'place' }),
  ...framed("{}'s, my {}'s, your {}'s, his {}'s, her {}'s, our {}'s", phrasesOf(OWNERS)).map(
    (phrase): [string, Role] => [phrase, { cat: 'elsewhere', as: 'owner' }],
  ),
  ...all<Role>(
    'the usual, a typical, the typical, the average, your average, your usual, your typical',
    {
      cat: 'elsewhere',
      as: 'usual',
    },
  ),
  ...all<Role>('off, off of, from, at, in, out of, down at, over at, by', { cat: 'whereWord' }),
  // Behind its name: 'the pie I grew up on', 'the one from the petrol station'.
  ...all<Role>(
    'i grew up on, i grew up with, we grew up on, we grew up with, i was raised on, i used to make, we used to make, i used to buy, we used to buy, i used to get, i used to have, i used to order, we used to order, my mum made, my mum makes, my mom made, my mom makes, my nan made, my gran made, my gran makes, my mother made, my mother makes, mum used to make, mom used to make, my mum used to make, my mom used to make, my nan used to make',
    { cat: 'elsewhereBehind', any: true },
  ),
  ...framed(
    'from the {}, from a {}, from my {}, in the {}, in a {}, at the {}, at a {}, at my {}, off the {}, from your {}, at your {}, down the {}, out of the {}',
    phrasesOf(PLACES),
  ).map((phrase): [string, Role] => [phrase, { cat: 'elsewhereBehind' }]),
  ...all<Role>(
    'at school, at work, in town, in the shops, down the road, round the corner, down the shop, you buy, you get, they sell, they serve, they do, you order, from a packet, out of a packet, from a box, out of a box, from a jar, out of a jar, from a tin, out of a tin, from the freezer, in the shops',
    { cat: 'elsewhereBehind' },
  ),
  ...scope(
    [
      ...framed("the {}'s, the {}'s one, the {}'s version, the {} equivalent", phrasesOf(PLACES)),
      ...phrasesOf('hers, his, the real one, the one in town'),
    ],
    'compared',
    'subject',
  ),
  ...scope(
    phrasesOf(
      'these have, these are, these come in at, and these have, and these are, mine has, mine have, mine come in at',
    ),
    'dish',
    'ahead',
  ),
];
