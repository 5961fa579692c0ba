import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NO_FACTS } from '#lib/claims/edit-facts';
import { mendAt, mendFor, mendsByWords } from '#lib/claims/mend-readings';
import { readEdit } from '#lib/claims/read-edit';
import {
  readingMendSchema,
  type Mend,
  type ReadingMend,
  type TextKind,
} from '#lib/episode/edit-schema';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';
import { aText, edited, rowsOf, subRip, readText } from './edit-build';

const NOTHING: Mend = { kind: 'nothing' };

const FILE = aFile(
  [
    aDish(
      'stew',
      aRecipe('stew-recipe', [grams('beans', 'bean', 200)], {
        portions: [{ id: 'half', kind: 'count', name: 'half', of: 2 }],
      }),
      { title: 'Bean stew' },
    ),
  ],
  [aFood('bean', { energyKcal: '100', protein: '15' })],
);

const SAID = 'right so now the whole pot has 50 grams of protein which is not bad at all for beans';
const WORDS = '50 grams of protein';

const spoken = (text: string) => ({ said: { id: 'captions', kind: 'captions' as const }, text });

/** The mend of some words of a text. */
function mendOf(text: string, words: string, mend: Mend): ReadingMend {
  const start = text.indexOf(words);
  return mendFor('m', spoken(text), start, start + words.length, mend);
}

describe('a reading that was put right', () => {
  test('is found again with other times, other lines and other marks', () => {
    const mend = mendOf(SAID, WORDS, NOTHING);
    const again =
      'Right, so now\nthe whole pot has  50 grams\nof protein, which is not BAD at all.';
    const start = again.indexOf('50');
    const end = again.indexOf(', which');
    expect(mendAt(mendsByWords([mend]), spoken(again), start, end)?.id).toBe('m');
  });

  test('is found with anything beyond four words on each side, and with nothing else within them', () => {
    const word = fc.stringMatching(/^[a-z]{1,8}$/);
    const row = (length: number) => fc.array(word, { minLength: length, maxLength: length });
    fc.assert(
      fc.property(row(4), row(4), row(3), row(3), word, (before, after, far, farther, other) => {
        const text = (first: string[], b: string[], a: string[], last: string[]) =>
          [...first, ...b, WORDS, ...a, ...last].join(' ');
        const mends = mendsByWords([mendOf(text(far, before, after, farther), WORDS, NOTHING)]);
        const at = (all: string) =>
          mendAt(mends, spoken(all), all.indexOf(WORDS), all.indexOf(WORDS) + WORDS.length);
        expect(at(text(farther, before, after, far))).not.toBeNull();
        const changed = before.with(3, `${other}x`);
        if (changed[3] !== before[3]) expect(at(text(far, changed, after, farther))).toBeNull();
      }),
    );
  });

  test('is a row that the file takes, however long its words are', () => {
    const long = 'x'.repeat(390);
    const text = `${`${long} `.repeat(6)}640 calories ${`${long} `.repeat(6)}`;
    expect(readingMendSchema.safeParse(mendOf(text, '640 calories', NOTHING)).success).toBe(true);
  });
});

describe('an edit with a mend', () => {
  const captions = (shift: number) => subRip([[1 + shift, 4 + shift, SAID]]);
  const rows = (mend: Mend, shift = 0) =>
    rowsOf(FILE, captions(shift), 'captions', { mends: [mendOf(SAID, WORDS, mend)] });

  test('judges nothing of words that say nothing, and lists them', () => {
    expect(rows(NOTHING)).toEqual([]);
    const { putAside } = readText(FILE, captions(7), 'captions', {
      mends: [mendOf(SAID, WORDS, NOTHING)],
    });
    expect(
      putAside.map(({ statement, mendId, place }) => [statement.words, mendId, place.startMs]),
    ).toEqual([[WORDS, 'm', 8000]]);
  });

  test('reads what was heard in the place of the words, a number alone as well', () => {
    for (const text of ['30 grams of protein', '30']) {
      const [row, ...others] = rows({ kind: 'heard', text }, 3600);
      expect(others).toEqual([]);
      expect(row?.statement).toMatchObject({ low: 30, nutrient: 'protein', scope: 'whole' });
      // 200 g of what has 15 g in 100 g.
      expect([row?.verdict, row?.mendId, row?.place.startMs]).toEqual(['agrees', 'm', 3_601_000]);
      expect(SAID.slice(row?.statement.start, row?.statement.end)).toBe(WORDS);
    }
  });

  test('holds a number against what the person said it is about', () => {
    const about = {
      kind: 'about',
      segmentId: 'stew',
      portionId: 'half',
      scope: 'portion',
    } as const;
    const text = 'and that is 15 grams of protein for me today and no less than that';
    const before = rowsOf(FILE, text)[0];
    expect(before?.verdict).not.toBe('agrees');
    const mended = rowsOf(FILE, text, 'captions', {
      mends: [mendOf(text, '15 grams of protein', about)],
    })[0];
    expect([mended?.verdict, mended?.statement]).toMatchObject(['agrees', { scope: 'portion' }]);
  });

  // 200 g of what has 15 g in 100 g are 30 g, with 100 g of what has 20 g the dish has 50 g.
  test.each([
    ['whole', '30', 'agrees'],
    ['whole', '50', 'off'],
    ['half', '15', 'agrees'],
    ['half', '25', 'off'],
    ['portion', '15', 'agrees'],
    ['portion', '30', 'off'],
    ['per100g', '50', 'unknown'],
    ['soFar', '50', 'unknown'],
    ['day', '50', 'unknown'],
  ] as const)('of %s keeps the ingredient that is named: %s g of it %s', (scope, said, verdict) => {
    const recipe = aRecipe(
      'r',
      [
        grams('beans', 'bean', 200, { text: '200 g beans' }),
        grams('feta', 'feta', 100, { text: '100 g feta' }),
      ],
      { portions: [{ id: 'two', kind: 'count', name: 'a bowl', of: 2 }] },
    );
    const foods = [
      aFood('bean', { protein: '15.0' }, { name: 'Beans' }),
      aFood('feta', { protein: '20.0' }, { name: 'Cheese, feta' }),
    ];
    const file = aFile([aDish('stew', recipe, { title: 'Bean stew' })], foods);
    const text = `The beans have ${said} grams of protein.`;
    const mend = {
      kind: 'about',
      segmentId: scope === 'day' ? null : 'stew',
      portionId: scope === 'portion' ? 'two' : null,
      scope,
    } as const;
    const words = rowsOf(file, text)[0]?.statement.words ?? '';
    const [row] = rowsOf(file, text, 'captions', { mends: [mendOf(text, words, mend)] });
    expect(row?.statement).toMatchObject({ scope: 'ingredient' });
    expect([row?.mendId, row?.verdict]).toEqual(['m', verdict]);
  });

  test('keeps the ids of all other rows', () => {
    const text = `${SAID} and 200 calories`;
    const ids = (more: ReadingMend[]) =>
      rowsOf(FILE, text, 'captions', { mends: more }).map(({ id }) => id);
    expect(ids([])).toEqual(['captions:0', 'captions:1']);
    expect(ids([mendOf(text, WORDS, NOTHING)])).toEqual(['captions:1']);
  });

  test.each<TextKind>(['card', 'title', 'thumbnail'])('of a %s holds in no other', (kind) => {
    const shown = '30 g of protein';
    const whole = { kind: 'about', segmentId: 'stew', portionId: null, scope: 'whole' } as const;
    const first = { said: { id: 'first', kind }, text: shown };
    const mend = mendFor('m', first, 0, shown.length, whole);
    expect(readingMendSchema.parse(mend)).toMatchObject({ textId: 'first' });
    const texts = ['first', 'second'].map((id) => aText(shown, kind, id));
    const { judged } = readEdit(edited(FILE, texts, { mends: [mend] }), NO_FACTS);
    expect(judged.map(({ place, mendId }) => [place.textId, mendId])).toEqual([
      ['first', 'm'],
      ['second', null],
    ]);
    // Without its text, as captions have it, it is of no card at all.
    const anywhere = { ...mend, textId: null };
    const without = readEdit(edited(FILE, texts, { mends: [anywhere] }), NO_FACTS);
    expect(without.judged.map(({ mendId }) => mendId)).toEqual([null, null]);
  });

  test('without texts says nothing', () => {
    expect(readEdit(FILE, NO_FACTS)).toMatchObject({ judged: [], putAside: [], named: [] });
  });
});
