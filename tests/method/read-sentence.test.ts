import { describe, expect, test } from 'vitest';
import { readSentence } from '#lib/method/read-sentence';
import { readAlike, sentences } from './score';

/** A step in one line: minutes, degrees, place, hands, inside. */
function told(text: string): string[] {
  return readSentence(text).map(({ minutes, degrees, equipment, hands, inside }) =>
    [
      minutes === null ? 'no time' : `${minutes.low ?? ''}–${minutes.high ?? ''} min`,
      ...degrees.map(({ value, unit, fan }) => `${value} ${unit}${fan ? ' fan' : ''}`),
      equipment,
      hands,
      ...(inside ? [`inside ${inside.value} ${inside.unit}`] : []),
    ].join(', '),
  );
}

describe('the sentences the grammar was written with', () => {
  test.each(sentences('written-with').map(({ text, steps }) => [text, steps] as const))(
    '%s',
    (text, steps) => {
      expect(readAlike(text)).toEqual(steps);
    },
  );
});

// Invented, and checked by eye against the conventions in the file of sentences.
test.each([
  [
    'Roast at 220C for 20 minutes, then at 170C for 40 minutes.',
    '20–20 min, 220 C, oven, by itself',
    '40–40 min, 170 C, oven, by itself',
  ],
  [
    'The loaf is baked at 230C for 20 minutes and left to cool for an hour.',
    '20–20 min, 230 C, oven, by itself',
    '60–60 min, none, by itself',
  ],
  ['Chill for a minimum of 2 hours, preferably overnight.', '120–720 min, fridge, by itself'],
  ['Wrap and refrigerate for up to 24 hours.', '–1440 min, fridge, by itself'],
  ['Freeze for 4 hours or more.', '240– min, freezer, by itself'],
  [
    'After 20 minutes, remove the foil and roast for 25 more minutes.',
    '25–25 min, oven, by itself',
  ],
  ['Grill for 4 minutes per side, 9 minutes in total.', '9–9 min, grill, by hand'],
  ['Take the butter out of the fridge 30 minutes before you start.', 'no time, none, by hand'],
  [
    'Sweat the leeks, then transfer to the slow cooker and cook on low for 8 hours.',
    'no time, burner, by hand',
    '480–480 min, none, by itself',
  ],
  [
    'Simmer the syrup until it reaches 118 °C on a sugar thermometer, about 8 minutes.',
    '8–8 min, 118 C, burner, by itself',
  ],
  ['Leave at room temperature (about 21 °C) for 2 hours.', '120–120 min, none, by itself'],
  ['Bake at 325F convection for one and a half hours.', '90–90 min, 325 F fan, oven, by itself'],
  ['Oven: 190C for 25 min from frozen', '25–25 min, 190 C, oven, by itself'],
  ['Freeze the rolls from warm for 3 hours.', '180–180 min, freezer, by itself'],
  ['210°C fan, 15 + 10 min', '25–25 min, 210 C fan, oven, by itself'],
  ['Bake at 180/160C fan for 1h30.', '90–90 min, 180 C, 160 C fan, oven, by itself'],
  ['Combine the flour, salt and brown sugar in a bowl.', 'no time, none, by hand'],
  ['Turn off the oven and leave the cheesecake inside for 1 hour.', '60–60 min, oven, by itself'],
  ['Whisk the whites in a stand mixer for 8 minutes.', '8–8 min, none, by itself'],
  ['Bake until the middle reads 96 °C.', 'no time, oven, by itself, inside 96 C'],
] as const)('%s', (text, ...steps) => {
  expect(told(text)).toEqual(steps);
});

test.each([
  'The dough should feel soft.',
  'Leftovers will keep in the fridge for 3 days.',
  'Makes 12 buns in 40 minutes.',
  'It should take about 25 minutes.',
  'You can freeze the cooked balls for 3 months.',
])('a remark asks for nothing: %s', (text) => {
  expect(readSentence(text)).toEqual([]);
});

test('each part says from which words it was read', () => {
  const text = 'Roast the squash at 200 °C for 35 to 40 minutes, until 90 °C inside.';
  const [step] = readSentence(text, 100);
  const words = (of: { start: number; end: number } | null | undefined) =>
    of ? text.slice(of.start - 100, of.end - 100) : null;
  expect(words(step?.minutesFrom)).toBe('35 to 40 minutes');
  expect(words(step?.degreesFrom)).toBe('200 °C');
  expect(words(step?.insideFrom)).toBe('90 °C');
  expect(words(step?.words)).toBe(text.slice(0, -1));
});
