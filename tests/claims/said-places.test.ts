import { describe, expect, test } from 'vitest';
import { dishesNamed, dishNamed, dishNames } from '#lib/claims/places/dish-names';
import { placeOf, type PlacedText } from '#lib/claims/places/placed-text';
import { readStatements } from '#lib/claims/read-statements';
import { saidPlaces } from '#lib/claims/said-places';
import type { EditText } from '#lib/episode/edit-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { aDish, aFile, aRecipe, aTalk } from '../support/build';
import { aText, edited, subRip } from './edit-build';

const dish = (id: string, title: string, more: Parameters<typeof aDish>[2] = {}) =>
  aDish(id, aRecipe(`${id}-recipe`, []), { title, ...more });

/** At 25 frames a second: hello until 0:10, the skillet until 0:30, the pots to the end. */
const TIMED = aFile(
  [
    aTalk('hello', { title: 'Hello', inFrame: 0, outFrame: 250 }),
    dish('skillet', 'Barley skillet', { inFrame: 250, outFrame: 750 }),
    dish('pots', 'Skyr pots', { inFrame: 750, outFrame: 1500 }),
  ],
  [],
);
const UNTIMED = aFile([dish('skillet', 'Barley skillet'), dish('pots', 'Skyr pots')], []);
const ALONE = aFile([dish('skillet', 'Barley skillet')], []);

function placed(file: EpisodeFile, text: string, kind?: EditText['kind']): PlacedText {
  const [first] = saidPlaces(edited(file, [aText(text, kind)]));
  if (!first) throw new Error('no text');
  return first;
}

/** The dish, or what else it is about, where some words stand. */
function topicAt(text: PlacedText, words: string): string {
  const at = text.text.indexOf(words);
  if (at < 0) throw new Error(`no ${words}`);
  const stretch = text.stretches.find(({ start, end }) => start <= at && at < end);
  return stretch?.topic.kind === 'dish' ? stretch.topic.segmentId : (stretch?.topic.kind ?? 'none');
}

describe('a text of the edit', () => {
  test('keeps the line and the times of captions, from the first cue of some words to the last', () => {
    const text = placed(
      TIMED,
      subRip([
        [11, 13, 'It has six'],
        [13, 15, 'hundred calories'],
        [15, 16, 'in all'],
      ]),
    );
    expect(text.text).toBe('It has six\nhundred calories\nin all');
    const start = text.text.indexOf('six');
    const place = placeOf(text, start, start + 'six\nhundred calories'.length);
    expect(place).toMatchObject({ startMs: 11_000, endMs: 15_000, segmentId: 'skillet' });
    // The times of the first cue stand in the second line of the file.
    expect(place.line).toBe(2);
  });

  test('counts the lines of a description as they were pasted', () => {
    const text = placed(ALONE, 'One\r\n\r\nthree has 5 g', 'description');
    expect(placeOf(text, text.text.indexOf('three'), text.text.length).line).toBe(3);
  });

  test('is cut into stretches that are all of it', () => {
    for (const text of saidPlaces(
      edited(TIMED, [
        aText(
          subRip([
            [1, 2, 'a'],
            [12, 13, 'b'],
            [40, 41, 'c'],
          ]),
        ),
      ]),
    )) {
      expect(text.stretches[0]?.start).toBe(0);
      expect(text.stretches.at(-1)?.end).toBe(text.text.length);
      text.stretches
        .slice(1)
        .forEach(({ start }, at) => expect(start).toBe(text.stretches[at]?.end));
    }
  });

  test('comes in the order: captions, title, card, description, talking points', () => {
    const file = edited(
      aFile(
        [dish('skillet', 'Barley skillet', { talkingPoints: [{ id: 'p', text: 'Say it' }] })],
        [],
      ),
      [aText('d', 'description'), aText('k', 'card'), aText('t', 'title'), aText('c')],
    );
    expect(saidPlaces(file).map(({ said }) => said.kind)).toEqual([
      'captions',
      'title',
      'card',
      'description',
      'talkingPoint',
    ]);
  });

  test('without words has no statement and says so', () => {
    const text = placed(ALONE, ' \n ');
    expect(text.text).toBe('');
    expect(text.remarks[0]?.message).toBe('There are no words in it.');
  });
});

describe('the dish that is talked about', () => {
  test('is the one that the cut has there', () => {
    const text = placed(
      TIMED,
      subRip([
        [1, 3, 'Morning all'],
        [12, 14, 'Barley now'],
        [40, 42, 'Skyr then'],
      ]),
    );
    expect(topicAt(text, 'Morning')).toBe('unknown');
    expect(topicAt(text, 'Barley')).toBe('skillet');
    expect(topicAt(text, 'Skyr')).toBe('pots');
  });

  test('changes at the end of a sentence that runs over the cut', () => {
    const text = placed(
      TIMED,
      subRip([
        [27, 29, 'It comes to about'],
        [29.5, 33, '600 calories. Skyr next'],
        [33, 35, 'is cold'],
      ]),
    );
    expect(topicAt(text, '600')).toBe('skillet');
    expect(topicAt(text, 'Skyr')).toBe('pots');
  });

  test('is by the chapters of a description where no segment has a place in the cut', () => {
    const file = edited(UNTIMED, [
      aText(
        subRip([
          [5, 7, 'Hello there'],
          [50, 52, 'in the pan'],
          [125, 127, 'in the glass'],
        ]),
      ),
      aText('Chapters\n0:00 Hello\n0:45 Barley skillet\n2:00 The skyr pots', 'description'),
    ]);
    const [text] = saidPlaces(file);
    if (!text) throw new Error('no text');
    expect(['Hello', 'pan', 'glass'].map((words) => topicAt(text, words))).toEqual([
      'unknown',
      'skillet',
      'pots',
    ]);
  });

  const byDescription = (description: string) => {
    const cues = subRip([
      [5, 7, 'Hello there'],
      [425, 427, 'in the pan'],
      [760, 762, 'in the glass'],
    ]);
    const [text] = saidPlaces(edited(UNTIMED, [aText(cues), aText(description, 'description')]));
    if (!text) throw new Error('no text');
    return ['Hello', 'pan', 'glass'].map((words) => topicAt(text, words));
  };

  // A list of chapters begins at 0:00 and rises (common practice, no source): a day’s meals do not.
  test.each([
    '7:00 am Barley skillet\n12:30 pm Skyr pots',
    '7:00 Barley skillet\n12:30 Skyr pots',
    '7:00 a.m. – Barley skillet\n12:30 p.m. – Skyr pots',
    '0:00 Skyr pots',
  ])('is by no times of day: %s', (description) => {
    expect(byDescription(description)).toEqual(['unknown', 'unknown', 'unknown']);
  });

  test.each([
    '0:00 Hello\n7:00 Barley skillet\n12:30 Skyr pots',
    'Hello [0:00]\nBarley skillet [7:00]\nSkyr pots [12:30]',
    '▶ 00:00 - 07:00 Hello\n▶ 07:00 - 12:30 Barley skillet\n▶ 12:30 Skyr pots',
    // What goes back is none: 3:00 is a mark within the list, and a time of day stands before it.
    '7:30 Up and out\n0:00 Hello\n7:00 Barley skillet\n3:00 Barley, again\n12:30 Skyr pots',
  ])('is by chapters that begin at 0:00 and rise: %s', (description) => {
    expect(byDescription(description)).toEqual(['unknown', 'skillet', 'pots']);
  });

  test('is under a time of day in a description, and under no chapter', () => {
    const meals = placed(
      UNTIMED,
      '7:00 am Barley skillet\n600 calories of breakfast\n\n12:30 pm Skyr pots\n300 calories of lunch',
      'description',
    );
    expect(topicAt(meals, 'of breakfast')).toBe('skillet');
    expect(topicAt(meals, 'of lunch')).toBe('pots');
    const dinner = placed(
      UNTIMED,
      'Barley skillet\n2.50 g of salt\n600 calories\n7 pm: Dinner out\n900 calories of it',
      'description',
    );
    expect(topicAt(dinner, '600')).toBe('skillet');
    expect(topicAt(dinner, 'of it')).toBe('unknown');
    const chapters = placed(
      UNTIMED,
      '0:00 Barley skillet\n7:00 Skyr pots\nAll of it: 900 calories',
      'description',
    );
    expect(topicAt(chapters, 'All of it')).toBe('unknown');
  });

  test('is by words that turn to it where nothing has times, and not by a name in passing', () => {
    const text = placed(
      UNTIMED,
      'welcome back. first up the barley skillet. it is hot. unlike the skyr it is filling. next up are the skyr pots and they are cold',
    );
    expect(topicAt(text, 'welcome')).toBe('unknown');
    expect(topicAt(text, 'it is hot')).toBe('skillet');
    expect(topicAt(text, 'filling')).toBe('skillet');
    expect(topicAt(text, 'they are cold')).toBe('pots');
  });

  test('is under its heading in a description, until another heading', () => {
    const text = placed(
      UNTIMED,
      'Two dishes.\n\nBARLEY SKILLET\nIngredients:\n150 g barley\n\nSkyr pots (serves 4)\nhalf a kilo of skyr\n\nTHE WHOLE DAY\n1500 kcal',
      'description',
    );
    expect(topicAt(text, 'Two')).toBe('unknown');
    expect(topicAt(text, '150 g')).toBe('skillet');
    expect(topicAt(text, 'half a kilo')).toBe('pots');
    expect(topicAt(text, '1500')).toBe('unknown');
  });

  test('of a line that names one and its numbers holds for that line', () => {
    const text = placed(
      UNTIMED,
      'Barley skillet: 640 kcal\nSkyr pots: 300 kcal\nTogether 940 kcal',
      'description',
    );
    expect(['640', '300', '940'].map((words) => topicAt(text, words))).toEqual([
      'skillet',
      'pots',
      'unknown',
    ]);
  });

  test('is the one there is, and of a title of several the day', () => {
    expect(topicAt(placed(ALONE, 'anything'), 'anything')).toBe('skillet');
    expect(topicAt(placed(UNTIMED, 'anything', 'title'), 'anything')).toBe('day');
    expect(topicAt(placed(ALONE, 'anything', 'title'), 'anything')).toBe('skillet');
  });
});

describe('the name of a dish', () => {
  const titles = ['Seeded flatbread (1 big one)', 'Bowl 1', 'Bowl 2', 'Leek soup', 'Dinner for 2'];
  const names = dishNames(titles.map((title) => ({ id: title, title })));

  test.each([
    ['the 28 centimetre one', null],
    ['a big spoon of yogurt, the big one', null],
    ['I used 1 lime and 2 eggs', null],
    ['this is the one you asked for', null],
    ['and now the bowl', null],
    ['last one, the flatbread', 'Seeded flatbread (1 big one)'],
    ['Bowl 2: 410 kcal', 'Bowl 2'],
    ['on to bowl number 1', 'Bowl 1'],
    ['the leek soup, a big one', 'Leek soup'],
    ['dinner is served', 'Dinner for 2'],
  ])('is told by its words, not by numbers and pronouns: %s', (text, title) =>
    expect(dishNamed(text, names)?.segmentId ?? null).toBe(title),
  );

  test('is none where only such words are left', () => {
    for (const title of ['This one', 'The big one', '2'])
      expect(dishesNamed(`so ${title} is big`, dishNames([{ id: 'a', title }]))).toEqual([]);
  });

  test('is told so within a sentence too: its “one” names no dish', () => {
    const dishes = ['Leek soup', 'Flatbread (1 big one)'];
    const said =
      'It is in a hot pan, the 28 centimetre one.\nA tablespoon of olive oil. It has 310 calories.';
    const read = readStatements(said, { form: 'captions', dish: 'Leek soup', dishes });
    expect(read.map((each) => ('dish' in each ? each.dish : undefined))).toEqual([
      undefined,
      undefined,
    ]);
    const named = readStatements('The flatbread has 310 calories.', { form: 'captions', dishes });
    expect(named[0]).toMatchObject({ dish: 'Flatbread (1 big one)' });
  });
});
