import type { EpisodeEdit } from '#lib/episode/edit-schema';

/** A cue of the rehearsal: when it begins and ends, in seconds of the cut, and what the captions have. */
type CaptionLine = readonly [from: number, to: number, text: string];

/**
 * What was said at Thursday's rehearsal, as captions have it. Some of it does not agree with the dishes: numbers of the
 * first trial, a digit misheard, a temperature of another recipe, a topping that was never weighed.
 */
const SAID: readonly CaptionLine[] = [
  // Good morning from the harbor
  [1.2, 4.6, 'Good morning from the harbor. Seven hours of sun,'],
  [4.6, 7.4, 'one oven, and three dishes.'],
  [8.1, 12.3, 'By the time the lamps come on I will have eaten'],
  [12.3, 16.9, 'sixteen eighty-five calories, with 119 grams of protein.'],
  [17.8, 21.5, 'My one rule: when I do not know a number,'],
  [21.5, 23.9, 'I say that I do not know it.'],
  [24.6, 29.8, 'Ferry at nine, light until three, so let us get the barley on.'],
  // Barley skillet
  [46.0, 49.2, 'First the barley skillet. A hundred and fifty grams'],
  [49.2, 51.8, 'of pearl barley, toasted in a dry pot.'],
  [53.4, 57.9, 'It smells of popcorn after four or five minutes.'],
  [59.0, 63.1, 'Then water on it, and it simmers for half an hour.'],
  [66.2, 70.4, 'Mushrooms next, 250 grams of button mushrooms,'],
  [70.4, 73.0, 'in a tablespoon of olive oil.'],
  [76.5, 80.8, 'Onion, carrot, two cloves of garlic.'],
  [84.0, 88.7, 'I had sixteen grams of browned turkey left from Wednesday.'],
  [92.1, 96.4, 'A cup of peas, two cups of spinach, lemon, pepper, salt.'],
  [101.5, 105.9, 'And I am finishing it with a spoon of chili oil,'],
  [105.9, 108.6, 'because it is December.'],
  [118.2, 122.9, 'So the whole skillet is fourteen hundred and nine calories.'],
  [123.4, 127.6, 'Half of that is seven hundred and four on my plate,'],
  [127.6, 131.2, 'with 34 grams of protein and 21 grams of fat.'],
  [133.0, 137.5, 'Sodium, about nine hundred milligrams a plate, I would say.'],
  [141.0, 145.6, 'And about 12 grams of fiber in each half.'],
  [152.8, 156.4, 'Two portions, one pan to wash.'],
  // Tray-baked turkey meatloaf
  [196.4, 200.3, 'The turkey meatloaf bakes flat, on a tray.'],
  [202.0, 206.8, '500 grams of ground turkey, one large zucchini,'],
  [206.8, 210.1, 'and fifteen grams of rolled oats to hold it.'],
  [213.4, 216.7, 'One egg, half a cup of cottage cheese.'],
  [221.0, 225.2, 'Three teaspoons of grainy mustard.'],
  [230.6, 235.9, 'First bake, 20 minutes at two hundred degrees Celsius.'],
  [240.2, 244.8, 'Then the glaze, and back in for another twelve to fifteen.'],
  [251.3, 256.6, 'It is done when the middle says 160 Fahrenheit.'],
  [258.0, 261.2, 'Then it rests for ten minutes.'],
  [275.5, 280.9, 'The whole tray is thirteen sixty-two calories'],
  [280.9, 285.4, 'and a hundred and twelve grams of protein.'],
  [287.0, 291.8, 'In each of the two halves that is 720 calories,'],
  [291.8, 295.5, 'no wait, 681, and 64 of protein.'],
  [298.4, 302.7, 'A slice of 150 grams, cold, has just under 200 calories.'],
  [306.1, 310.6, 'Each half has at least sixty grams of protein,'],
  [310.6, 313.9, 'so yes, this is high protein.'],
  [318.8, 323.4, 'And a whole half has less than 25 grams of fat.'],
  // Skyr pots with oat crumb
  [386.2, 390.0, 'Last, skyr pots with a crumb you can hear.'],
  [392.5, 396.9, '600 grams of plain skyr, 200 of frozen blueberries.'],
  [399.3, 404.0, 'The crumb is 80 grams of oats, 25 of almonds,'],
  [404.0, 408.2, 'two tablespoons of butter and 20 grams of brown sugar.'],
  [412.7, 417.1, 'Eight minutes at 160, then leave it alone for fifteen.'],
  [421.0, 424.4, 'That makes four pots, three with lids.'],
  [431.8, 436.5, 'All four are 1,198 calories, so a pot is three hundred.'],
  [438.0, 442.6, 'Twenty-one grams of protein each, eleven of fat,'],
  [442.6, 446.0, 'and around 32 grams of carbs.'],
  [449.5, 453.8, 'I call it a low fat dessert, and I stand by that.'],
  // What the day adds up to
  [511.0, 515.2, 'So what does the day add up to? Half a skillet, 704.'],
  [515.2, 518.6, 'Half a tray, 681. One pot, 300.'],
  [519.4, 524.7, 'That is 1,785 calories for the day'],
  [524.7, 529.0, 'and 119 grams of protein, 61 of fat.'],
  [533.2, 538.9, 'That is the dishes you saw. The coffee on the pier'],
  [538.9, 541.5, 'is between me and the pier.'],
];

function time(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const two = (part: number) => String(part).padStart(2, '0');
  const rest = String(ms % 1000).padStart(3, '0');
  return `${two(Math.floor(ms / 60_000))}:${two(Math.floor(ms / 1000) % 60)}.${rest}`;
}

const captions = [
  'WEBVTT',
  ...SAID.map(([from, to, text]) => `${time(from)} --> ${time(to)}\n${text}`),
  '',
].join('\n\n');

/** The rehearsal's captions, two titles and what stands on the thumbnail and on a card. */
export const EDIT: EpisodeEdit = {
  texts: [
    { id: 'text-rehearsal', kind: 'captions', name: 'rehearsal-thursday.vtt', text: captions },
    {
      id: 'text-title-second',
      kind: 'title',
      name: 'second title',
      text: 'One oven, 119 g of protein: a whole harbor day for 1,700 calories',
    },
    {
      id: 'text-thumbnail',
      kind: 'thumbnail',
      name: 'thumbnail',
      text: '1,685 CALORIES · ONE OVEN',
    },
    {
      id: 'text-card-skillet',
      kind: 'card',
      name: 'card of the first trial',
      text: 'Barley skillet, one of two: 704 kcal · 43 g protein · 21 g fat · 102 g carbs',
    },
  ],
  mends: [],
  named: [],
};
