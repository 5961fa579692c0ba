import { describe, expect, it } from 'vitest';
import type { Portion } from '#lib/episode/recipe-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { SaidLine } from '#lib/episode/said-line';
import { BLOCK_KINDS, DISH_PARTS, type DescriptionLayout } from '#lib/episode/publish-schema';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { description } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';
import { numbersToPublish } from '#lib/publish/from-lock';
import { pieceText } from '#lib/publish/pieces';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const panel = { energyKcal: '100.00', protein: '10.00', fat: '1.00', carbohydrate: '2.00' };
const ROUNDING = '* adds up only because of rounding';

/** 401 g in four equal parts by eye, each exactly a quarter: 100.25 kcal and 401 together, so one of them is 101. */
const quarters = ['a', 'b', 'c', 'd'].map((name): Portion => {
  return { id: name, kind: 'byEye', name, share: { num: 1, den: 4 }, permille: 0 };
});
const cut = aFile(
  [aDish('tray', aRecipe('r', [grams('leek', 'f', 401)], { portions: quarters }))],
  [aFood('f', panel)],
  { episode: { anythingElse: { kind: 'nothing' } } },
);

/** Soup that was said to be 251 kcal, and that is 280. */
const said = (scope: SaidLine['scope']): EpisodeFile => {
  const half: Portion = { id: 'half', kind: 'count', name: 'a half', of: 2 };
  const line: SaidLine = {
    ...{ id: 's', at: '2026-03-01T10:00:00Z', scope, text: '251 calories.' },
    numbers: [{ nutrient: 'energyKcal', amount: 251, hedge: 'exact', value: 251 }],
  };
  return aFile(
    [
      aDish('soup', aRecipe('r1', [grams('leek', 'f', 280)], { portions: [half] })),
      aDish('bread', aRecipe('r2', [grams('flour', 'f', 300)])),
    ],
    [aFood('f', panel)],
    { said: [line] },
  );
};
const SAID = said({ kind: 'whole', segmentId: 'soup' });

const all = (shown: (kind: string) => boolean): DescriptionLayout => ({
  ...DEFAULT_LAYOUT,
  blocks: BLOCK_KINDS.map((kind) => ({ kind, shown: shown(kind) })),
});
const pieceOf = (file: EpisodeFile, segmentIds: string[] | null, limit = 5000) =>
  pieceText(numbersToPublish(file, null), {
    ...{ id: 'p', kind: 'clip', title: 'A minute', segmentIds, limit },
  }).text;

describe('a mark of a description', () => {
  it('of a portion among unequal ones has its note', () => {
    const { text } = description(cut);
    expect(text).toMatch(/\n[A-D] \(by eye\): 101\* kcal/);
    expect(text).toContain(ROUNDING);
  });

  it('is told of no number that the text does not show', () => {
    // 0.40 g of fibre in each of two dishes: 0.8 together is printed 1, so one of them is 1.
    const fibre = aFood('f', { ...panel, fibre: '0.40' });
    const two = aFile(
      ['one', 'two'].map((id) => aDish(id, aRecipe(`r-${id}`, [grams(`leek ${id}`, 'f', 100)]))),
      [fibre],
    );
    expect(description(two).text).not.toContain('*');
    const noPortions = { ...DEFAULT_LAYOUT, dish: ['whole' as const] };
    expect(description(cut, undefined, { layout: noPortions }).text).not.toContain('*');
  });

  it('is told whatever the layout hides', () => {
    const hidden = description(SAID, undefined, { layout: all((kind) => kind !== 'notes') });
    expect(hidden.text).toContain('\n† soup: 251 kcal is what was said in the video; ');
    const day = description(SAID, undefined, { layout: all((kind) => kind === 'day') }).text;
    expect(day).toContain('soup 251† + bread 300');
    expect(day).toContain('\n† soup, all of it: 251 kcal is what was said in the video; ');
  });

  it('is told once of a number, however often it stands there', () => {
    const { text } = description(SAID);
    expect(text.match(/†/g)).toHaveLength(3);
    expect(text.match(/^†/gm)).toHaveLength(1);
  });

  it.each(DISH_PARTS)('stands in the text wherever %s is alone of a dish', (part) => {
    for (const file of [
      cut,
      SAID,
      said({ kind: 'portion', segmentId: 'soup', portionId: 'half' }),
    ]) {
      const { text } = description(file, undefined, {
        layout: { ...DEFAULT_LAYOUT, dish: [part] },
      });
      for (const mark of ['*', '†']) {
        expect(text.includes(`\n${mark} `), text).toBe(new RegExp(`\\d\\${mark}`).test(text));
      }
    }
  });
});

describe('what went out as a correction', () => {
  it('is in the text whatever the layout hides', () => {
    const layout = all((kind) => kind !== 'corrections');
    const corrections = ['1 March 2026: soup has 280 kcal, not 251.'];
    const { text } = description(SAID, undefined, { layout, corrections });
    expect(text).toContain('soup has 280 kcal, not 251');
  });
});

describe('a mark of a piece', () => {
  it('has its note, also where the piece is too long', () => {
    for (const limit of [5000, 20]) {
      const text = pieceOf(SAID, ['soup'], limit);
      expect(text).toContain('The whole dish: 251† kcal');
      expect(text).toContain(
        '\n† soup: 251 kcal is what was said in the video; by the ingredients',
      );
    }
    expect(pieceOf(cut, ['tray'])).toContain(ROUNDING);
    expect(pieceOf(SAID, null)).toContain('\n† soup, all of it: 251 kcal is what was said');
    expect(pieceOf(SAID, null, 20)).not.toContain('†');
  });

  it('is gone with the number that it stood beside', () => {
    const text = pieceOf(cut, ['tray'], 20);
    expect(text).not.toContain('*');
    expect(text).toContain('The whole dish: 401 kcal');
  });
});

describe('a mark of a card', () => {
  const cardsWith = (file: EpisodeFile) =>
    cardsOf(numbersToPublish(file, null)).map((card) => ({
      name: card.name,
      shown: [card.lead, ...card.others]
        .map((number) => number?.number ?? '')
        .concat(card.rows.map(({ amount }) => amount))
        .join(' '),
      notes: card.notes.join('\n'),
    }));

  it.each([
    ['said of a dish', SAID],
    ['said of a portion', said({ kind: 'portion', segmentId: 'soup', portionId: 'half' })],
    ['of a portion among unequal ones', cut],
  ])('%s has its note on every card that shows it, and on no other', (_, file) => {
    const cards = cardsWith(file);
    expect(cards.some(({ shown }) => /[*†]/.test(shown))).toBe(true);
    for (const { name, shown, notes } of cards) {
      for (const mark of ['*', '†']) {
        expect(notes.includes(mark), `${mark} on ${name}`).toBe(shown.includes(mark));
      }
    }
  });

  it('says of one that only misses the others that were said that it does not add up', () => {
    const file = said({ kind: 'whole', segmentId: 'soup' });
    const at = (id: string, scope: SaidLine['scope'], amount: number): SaidLine => ({
      ...{ id, at: '2026-03-01T10:00:00Z', scope, text: '.' },
      numbers: [{ nutrient: 'energyKcal', amount, hedge: 'exact', value: amount }],
    });
    const clashing = {
      ...file,
      said: [at('a', { kind: 'whole', segmentId: 'soup' }, 280), at('b', { kind: 'day' }, 579)],
    };
    const notes = cardsWith(clashing).map((card) => card.notes);
    expect(notes.join('\n')).toContain('it does not add up with the others that were said');
    expect(notes.join('\n')).not.toContain('the ingredients say otherwise');
  });
});
