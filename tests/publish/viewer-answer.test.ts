import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { takeLock } from '#lib/lock/numbers-lock';
import { numbersToPublish } from '#lib/publish/from-lock';
import { answerTo, type AnswerChoice } from '#lib/publish/viewer-answer';
import { readComment } from '#lib/publish/viewer-comment';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

/** Invented dishes; the numbers of each case are worked out by hand beside it. */
const foods = [
  aFood(
    'meat',
    { energyKcal: '110', protein: '22.0', fat: '2.0', carbohydrate: '0' },
    { name: 'Breast' },
  ),
  aFood(
    'beans',
    { energyKcal: '80', protein: '5.0', fat: '0.4', carbohydrate: '14.0' },
    { name: 'Beans' },
  ),
  aFood(
    'oil',
    { energyKcal: '884', protein: '0', fat: '100', carbohydrate: '0' },
    { name: 'Oil', section: 'oilsAndSauces' },
  ),
];
const portions = [{ id: 'third', kind: 'count' as const, name: 'a plate', of: 3 }];
const stew = aRecipe(
  'r',
  [grams('meat', 'meat', 600), grams('b', 'beans', 400), grams('oil', 'oil', 30)],
  { portions },
);
const salad = aRecipe('r2', [grams('b2', 'beans', 250), grams('oil2', 'oil', 10)]);
const file: EpisodeFile = aFile(
  [aDish('stew', stew, { title: 'Bean stew' }), aDish('salad', salad, { title: 'Lemon salad' })],
  foods,
);
// Stew 660 + 320 + 265.2 = 1,245.2 kcal, a third 415.07; salad 200 + 88.4 = 288.4 kcal.
const NOTHING_SAID: AnswerChoice = { number: null, segmentId: null, scope: null, slip: null };
const answer = (
  comment: string,
  choice: Partial<AnswerChoice> = {},
  of = file,
  lock: string | null = null,
) => answerTo(numbersToPublish(of, lock), comment, { ...NOTHING_SAID, ...choice });

describe('a viewer’s comment', () => {
  // Sentences of our own, in the voices of comments.
  it.each([
    ['made it, tracked everything and got about 520 kcal', 520, 'energyKcal', true, null],
    ['I get 327 calories a portion?', 327, 'energyKcal', false, 'portion'],
    ['mine says 61 g protein', 61, 'protein', false, null],
    ['it came out to five hundred and twelve calories', 512, 'energyKcal', false, null],
    ['i got 1,245 cals for all of it', 1245, 'energyKcal', false, 'whole'],
    ['mine came to 1,960 kJ', 1960, 'energyKj', false, null],
    ['1245 for the whole tray here', 1245, 'energyKcal', false, 'whole'],
  ])('is read: %s', (comment, amount, nutrient, about, of) => {
    expect(readComment(comment, [])[0]).toMatchObject({ amount, nutrient, about, of });
  });

  it('has its digits behind the point, and no number where there is none', () => {
    expect(readComment('I get 10.5 g carbs', [])[0]).toMatchObject({ amount: 10.5, decimals: 1 });
    expect(readComment('I get 10.0 g carbs', [])[0]).toMatchObject({ amount: 10, decimals: 1 });
    expect(readComment('2 eggs, 3 portions, 200 °C, 25 min, made on 12/06/2025', [])).toEqual([]);
    expect(readComment('<script>alert(1)</script> lovely!', [])).toEqual([]);
    expect(readComment('9'.repeat(4000), [])).toEqual([]);
  });
});

describe('an answer', () => {
  it('takes the dish that is named, and tells the step that gives the number', () => {
    const found = answer('I get 327 calories for the stew');
    expect(found).toMatchObject({ why: 'named', dish: { id: 'stew' }, slip: 'fatLeftOut:oil' });
    expect(found.draft).toContain('without the oil it comes to 327 calories');
    expect(found.draft).toContain('has 415 calories a portion');
  });

  it('knows its own number where it is quoted, and takes the other for the viewer’s', () => {
    const found = answer('How is this only 415 calories?? I calculated 327!');
    expect(found).toMatchObject({
      why: 'ourNumber',
      dish: { id: 'stew' },
      number: { amount: 327 },
    });
  });

  it('finds the dish by the step that gives the number, and takes another that is chosen', () => {
    // The salad without its oil: 200 kcal.
    expect(answer('I get 200 calories')).toMatchObject({ why: 'explains', dish: { id: 'salad' } });
    const other = answer('I get 200 calories', { segmentId: 'stew' });
    expect(other).toMatchObject({ why: 'chosen', dish: { id: 'stew' } });
  });

  it('says what it does not know, and never that the viewer is wrong', () => {
    const found = answer('I get 777 calories for the stew');
    expect(found).toMatchObject({ slip: null, found: { standing: 'unexplained' } });
    expect(found.draft).toContain('couldn’t find the one difference that gives 777 calories');
    expect(answer('lovely video')).toMatchObject({ number: null, draft: '' });
  });

  it('speaks of the numbers of the lock, not of those of now', () => {
    const lock = takeLock(file).snapshot;
    const changed = structuredClone(file);
    changed.episode.segments[0]?.recipe?.lines.splice(0, 1, grams('meat', 'meat', 900));
    expect(answer('I get 327 calories for the stew', {}, changed, lock).draft).toContain(
      '415 calories a portion',
    );
    // 990 + 320 + 265.2 = 1,575.2, a third 525.1.
    expect(answer('I get 327 calories for the stew', {}, changed).draft).toContain(
      '525 calories a portion',
    );
  });

  it('calls a number the same that the tally has rounded the other way', () => {
    // 288.4 and 288.4 are 576.8: one of two like dishes prints 289.
    const twins = aFile(
      [
        aDish('a', salad, { title: 'First' }),
        aDish(
          'b',
          {
            ...salad,
            id: 'r3',
            lines: salad.lines.map((line) => ({ ...line, id: `x${line.id}` })),
          },
          { title: 'Second' },
        ),
      ],
      foods,
    );
    const numbers = numbersToPublish(twins, null).numbers;
    const printed = ['a', 'b'].map(
      (segmentId) => numbers('energyKcal', { kind: 'whole', segmentId }).number,
    );
    expect([...printed].sort()).toEqual(['288', '289']);
    const high = printed.indexOf('289') === 0 ? 'a' : 'b';
    expect(answer('I get 289 kcal', { segmentId: high }, twins).found?.standing).toBe('same');
  });
});
