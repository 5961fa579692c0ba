import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseEpisodeFile } from '#lib/episode/file';
import type { Piece } from '#lib/episode/publish-schema';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import { takeLock } from '#lib/lock/numbers-lock';
import { numbersToPublish } from '#lib/publish/from-lock';
import { pieceText } from '#lib/publish/pieces';
import { aDish, aFile, aFood, aLine, aRecipe, grams } from '../support/build';
import { step } from '../shoot/made-day';

const url = new URL('../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
const demo = parsed.value;
const publish = numbersToPublish(demo, null);
const piece = (more: Partial<Piece> = {}): Piece => ({
  ...{ id: 'p', kind: 'clip', title: 'Loaf in a minute', segmentIds: ['seg-loaf'], limit: 5000 },
  ...more,
});

describe('a piece', () => {
  it('has its own title, and the numbers of its dish alone, with ingredients and cautions', () => {
    const { text, fits, without } = pieceText(publish, piece());
    expect(text.split('\n')[0]).toBe('Loaf in a minute');
    expect(text).toContain('The whole dish: 1362 kcal · 127 g protein');
    expect(text).toContain('- 500 g ground turkey, 93 % lean (498 g weighed, raw)');
    expect(text).not.toContain('barley');
    // FoodSafety.gov chart: ground poultry 165 °F, 73.9 °C.
    expect(text).toContain('74 °C (165 °F) inside');
    expect([fits, without]).toEqual([true, []]);
  });

  it('of the day has the day’s numbers', () => {
    expect(pieceText(publish, piece({ segmentIds: null })).text).toContain(
      'The dishes shown: 1685 kcal',
    );
  });

  it('of the day says what each dish brings to it, and what was not counted, however short', () => {
    const { episode } = demo;
    const other = { kind: 'notCounted' as const, what: 'two coffees' };
    const file = { ...demo, episode: { ...episode, anythingElse: other } };
    const of = (limit: number) =>
      pieceText(numbersToPublish(file, null), piece({ segmentIds: null, limit }));
    expect(of(5000).text).toContain(
      'Calories eaten, kcal: Barley skillet 704 + Tray-baked turkey meatloaf 681 + Skyr pots with oat crumb 300',
    );
    for (const limit of [5000, 20]) expect(of(limit).text).toContain('Not counted: two coffees');
    expect(of(20).without).toEqual(['hook', 'dishes']);
  });

  it('leaves out what is missed least until it fits, and never numbers, allergens or cautions', () => {
    const short = pieceText(publish, piece({ limit: 1000 }));
    expect(short.without).toEqual(['ingredients']);
    expect(short.fits).toBe(true);
    const least = pieceText(publish, piece({ limit: 20 }));
    expect(least.fits).toBe(false);
    for (const words of ['1362 kcal', 'Allergens in the episode: milk', '74 °C']) {
      expect(least.text).toContain(words);
    }
  });

  it('says of what it left out only what it would have had', () => {
    expect(pieceText(publish, piece({ limit: 20 })).without).toEqual(['ingredients', 'portions']);
    expect(pieceText(publish, piece({ segmentIds: null, limit: 20 })).without).toEqual([
      'hook',
      'dishes',
    ]);
  });

  it('has the numbers of its episode’s lock, also where that is broken', () => {
    const { edit: _, ...file } = demo;
    const { snapshot } = takeLock(file);
    const other = structuredClone(file);
    for (const food of other.foods) food.version = { ...food.version, values: {} };
    const broken = numbersToPublish(other, snapshot);
    expect(broken.standing).toBe('broken');
    expect(pieceText(broken, piece()).text).toBe(pieceText(publish, piece()).text);
  });

  it('is held against its limit as its length is counted: by code points', () => {
    const title = '🍳'.repeat(40);
    const { length } = pieceText(publish, piece({ title }));
    expect(length.utf16Units).toBe(length.codePoints + 40);
    const exact = pieceText(publish, piece({ title, limit: length.codePoints }));
    expect([exact.fits, exact.without]).toEqual([true, []]);
    const least = pieceText(publish, piece({ title, limit: 20 })).length.codePoints;
    expect(pieceText(publish, piece({ title, limit: least })).fits).toBe(true);
    expect(pieceText(publish, piece({ title, limit: least - 1 })).fits).toBe(false);
  });

  it('has the inside temperatures of dishes that its dish is made from, at any depth', () => {
    const hot = (id: string, coreMilliC: number | null) =>
      coreMilliC === null ? [] : [step(id, { coreMilliC })];
    const from = (recipeId: string) =>
      aLine(`of ${recipeId}`, null, {
        madeFrom: { recipeId, rev: 1 },
        quantity: { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } },
        unit: 'batch',
      });
    const dish = (id: string, lines: RecipeLine[], coreMilliC: number | null) =>
      aDish(id, aRecipe(`r-${id}`, lines), { steps: hot(id, coreMilliC) });
    const file = aFile(
      [
        // FoodSafety.gov chart: ground poultry 165 °F, 73.9 °C; eggs dishes 160 °F, 71.1 °C.
        dish('ragout', [grams('turkey', 'f', 100)], 73_900),
        dish('sauce', [from('r-ragout')], null),
        dish('lasagne', [from('r-sauce'), grams('pasta', 'f', 100)], null),
        dish('flan', [grams('egg', 'f', 100)], 71_100),
      ],
      [aFood('f', { energyKcal: '100' })],
    );
    const of = (...segmentIds: string[]) =>
      pieceText(numbersToPublish(file, null), piece({ segmentIds, limit: 20 })).text;
    expect(of('lasagne')).toContain('ragout: 74 °C (165 °F) inside.');
    expect(of('lasagne')).toContain('Follow your local food safety code');
    expect(of('lasagne')).not.toContain('flan');
    expect(of('flan')).not.toContain('ragout');
  });

  it('of several dishes names the one that another is made from', () => {
    const file = aFile(
      [
        aDish('sauce', aRecipe('r-sauce', [grams('tomato', 'f', 100)]), { title: 'Tomato sauce' }),
        aDish(
          'pasta',
          aRecipe('r-pasta', [
            aLine('the sauce', null, {
              madeFrom: { recipeId: 'r-sauce', rev: 1 },
              quantity: { low: { num: 1, den: 1 }, high: { num: 1, den: 1 } },
              unit: 'batch',
            }),
          ]),
        ),
      ],
      [aFood('f', { energyKcal: '100' })],
    );
    const of = (...segmentIds: string[]) =>
      pieceText(numbersToPublish(file, null), piece({ segmentIds })).text;
    expect(of('sauce', 'pasta')).toContain('- the sauce (1 batch, see Tomato sauce)');
    expect(of('pasta')).toContain('- the sauce (1 batch, made of: tomato)');
  });

  it('says that its dishes are gone', () => {
    expect(pieceText(publish, piece({ segmentIds: ['nowhere'] })).empty).toBe(true);
  });
});
