import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Card } from '#lib/publish/cards/card';
import { cardsOf } from '#lib/publish/cards/cards-of';
import { correctionCard, swapTableCard } from '#lib/publish/cards/change-cards';
import { drawable } from '#lib/publish/cards/drawable';
import { drawCard } from '#lib/publish/cards/draw-card';
import { CARD_SIZES, cardFrame, THUMBNAIL_SIZE, type CardSize } from '#lib/publish/cards/frame';
import { CARD_GROUNDS } from '#lib/publish/cards/inks';
import { linesOf } from '#lib/publish/cards/lines';
import { numbersToPublish } from '#lib/publish/from-lock';
import { takeLock } from '#lib/lock/numbers-lock';
import { widthAtMost } from '#lib/publish/picture-text';
import { loadSr28 } from '#seed/load-sr28';
import { aDish, aFile, aFood, aRecipe, grams } from '../../support/build';
import { incompleteEpisode } from '../../support/incomplete-episode';
import { COLOURS, demo, draftCards, linesIn } from './support';

/** Words without blanks and without the dots between facts. */
const bare = (text: string) => text.replace(/[\s·]/g, '');
const letters = (text: string) => [...bare(text)].sort().join('');

const LOOKS = CARD_SIZES.filter((size) => size !== THUMBNAIL_SIZE).flatMap((size) =>
  CARD_GROUNDS.map((ground) => ({ size, ground, colours: COLOURS })),
);

/** All pictures of a card hold its words, each within the room for text; nothing is cut. */
function expectWhole(card: Card, look: (typeof LOOKS)[number]): void {
  const pages = drawCard(card, look);
  const { text } = cardFrame(look.size);
  const lines = pages.flatMap(linesIn);
  for (const { words, left, right, base, size } of lines) {
    expect(left, words).toBeGreaterThanOrEqual(text.left - 0.01);
    expect(right, words).toBeLessThanOrEqual(text.right + 0.01);
    expect(base - size, words).toBeGreaterThanOrEqual(text.top - size);
    expect(base, words).toBeLessThanOrEqual(text.bottom);
    expect(words).not.toContain('…');
  }
  const drawn = letters(lines.map(({ words }) => words).join(''));
  const mine = card.rows.map(({ words, amount }) => words + amount).join('');
  const left = [...drawn];
  for (const letter of letters(mine + card.say + card.notes.join(''))) {
    const at = left.indexOf(letter);
    expect(at, `${letter} of ${card.title}`).toBeGreaterThanOrEqual(0);
    left.splice(at, 1);
  }
  for (const page of pages) expect(bare(page)).toContain(bare(linesIn(page)[0]?.words ?? '?'));
  if (pages.length > 1) {
    pages.forEach((page, at) => {
      expect(linesIn(page).map(({ words }) => words)).toContain(`${at + 1} of ${pages.length}`);
    });
  }
}

describe('lines of words', () => {
  const word = fc.string({
    unit: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyzÅéMW0123456789'),
    minLength: 1,
    maxLength: 30,
  });
  test('lose nothing and fit', () => {
    fc.assert(
      fc.property(
        fc.array(word, { maxLength: 40 }),
        fc.integer({ min: 60, max: 1200 }),
        (words, width) => {
          const text = words.join(' ');
          const lines = linesOf(text, { size: 40, face: 'text' }, width);
          expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
          for (const line of lines) {
            expect(widthAtMost(line, 40, 'text')).toBeLessThanOrEqual(width);
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  test('keep a number and its unit together, and are of about one length', () => {
    for (let width = 200; width < 900; width += 7) {
      const lines = linesOf(
        'bake at 220 °C (428 °F) for 18 min, then add 1,250 g of it',
        {
          ...{ size: 40, face: 'text' },
        },
        width,
      );
      const all = `\n${lines.join('\n')}\n`;
      for (const together of ['220 °C', '428 °F', '18 min', '1,250 g']) {
        expect(all).toContain(together);
      }
    }
    const two = linesOf(
      'about 41 calories more a portion; the protein stays within a gram',
      {
        ...{ size: 40, face: 'text' },
      },
      1180,
    );
    expect(two).toHaveLength(2);
    expect(two.at(-1)?.split(' ').length).toBeGreaterThan(3);
  });
});

describe('letters without a form', () => {
  test.each([
    ['⅓ cup oats', '1⁄3 cup oats', []],
    ['2⅔ cups', '2 2⁄3 cups', []],
    ['Mapo tofu 麻婆豆腐', 'Mapo tofu', ['麻婆豆腐']],
    ['麻婆豆腐', 'dish 2', ['麻婆豆腐']],
    ['שקשוקה', 'dish 2', ['שקשוקה']],
    ['شوربة عدس', 'dish 2', ['شوربة عدس']],
    ['🍅 Soup 👩🏽‍🍳', 'Soup', ['🍅', '👩🏽🍳']],
    ['Crème brûlée', 'Crème brûlée', []],
  ])('%s', (words, text, lost) => {
    expect(drawable(words, 'dish 2')).toEqual({ text, lost });
  });

  test('a card says what stands for them, and names them', () => {
    const file = aFile(
      [aDish('a', aRecipe('r', [grams('l', 'f', 100, { text: '豆腐' })]), { title: '麻婆豆腐' })],
      [aFood('f', { energyKcal: '80', protein: '8', fat: '4', carbohydrate: '2' })],
    );
    const cards = cardsOf(numbersToPublish(file, null));
    const [dish, ingredients] = cards;
    expect(dish).toMatchObject({ title: 'dish 1', lost: ['麻婆豆腐'] });
    expect(ingredients?.rows).toEqual([{ words: 'line 1', amount: '100 g as sold' }]);
    expect(ingredients?.lost).toEqual(['麻婆豆腐', '豆腐']);
  });
});

describe('what a card shows', () => {
  test('draft and broken are marked, locked is not', () => {
    const file = demo();
    const words = (snapshot: string | null, of = file) =>
      cardsOf(numbersToPublish(of, snapshot)).map((card) =>
        drawCard(card, {
          size: card.kind === 'thumbnail' ? '1280x720' : '1920x1080',
          ground: 'plate',
          colours: COLOURS,
        })
          .flatMap(linesIn)
          .map((line) => line.words),
      );
    const { snapshot } = takeLock(file);
    for (const card of words(null)) expect(card).toContain('not locked');
    for (const card of words(snapshot)) {
      expect(card).not.toContain('not locked');
      expect(card).not.toContain('lock broken');
    }
    const changed = structuredClone(file);
    const line = changed.episode.segments
      .flatMap(({ recipe }) => recipe?.lines ?? [])
      .find(({ planned }) => planned);
    if (!line?.planned) throw new Error('the demo has typed grams');
    line.planned = { lowMg: 1, valueMg: 1, highMg: 1 };
    for (const card of words(snapshot, changed)) expect(card).toContain('lock broken');
  });

  test('open says open with its reason, at least says at least; no number stands without its unit', () => {
    const cards = cardsOf(numbersToPublish(incompleteEpisode(), null));
    const dish = (title: string) => {
      const card = cards.find((each) => each.kind === 'dish' && each.title === title);
      if (!card) throw new Error(title);
      const [svg = ''] = drawCard(card, { size: '1920x1080', ground: 'plate', colours: COLOURS });
      return { card, words: linesIn(svg).map(({ words }) => words) };
    };
    const open = dish('Open stew');
    expect(open.card.lead).toMatchObject({ number: null, unit: 'calories', whisker: null });
    expect(open.words.filter((each) => each === 'open')).toHaveLength(4);
    expect(open.words.join(' ')).toContain('open: no food chosen for a mystery herb');
    const part = dish('Partial bake');
    expect(part.card.lead).toMatchObject({ hedge: 'at least', unit: 'kcal' });
    expect(part.words).toContain('at least');
    expect(part.words.join(' ')).toContain('no value for a bare root');
    for (const { lead, others } of cards) {
      for (const each of lead ? [lead, ...others] : others) expect(each.unit).not.toBe('');
    }
  });

  test('the numbers are those that are published', () => {
    const source = numbersToPublish(demo(), null);
    for (const card of cardsOf(source)) {
      if (card.kind !== 'dish' || card.segmentId === null) continue;
      const scope = { kind: 'whole', segmentId: card.segmentId } as const;
      expect(card.lead?.number).toBe(source.numbers('energyKcal', scope).number);
      expect(card.others.map(({ number }) => number)).toEqual(
        (['protein', 'fat', 'carbohydrate'] as const).map(
          (nutrient) => source.numbers(nutrient, scope).number,
        ),
      );
    }
  });

  test('a dish of several portions has a picture for each beside that of all of it; a sum says of what it is', () => {
    const beans = aFood('f', { energyKcal: '80', protein: '12', fat: '0', carbohydrate: '2' });
    const dish = (id: string, of: number) => {
      const portion = { id: `p-${id}`, kind: 'count' as const, name: `one of ${of}`, of };
      const recipe = aRecipe(`r-${id}`, [grams(`l-${id}`, 'f', 400)], { portions: [portion] });
      return aDish(id, recipe, { title: id });
    };
    const file = aFile([dish('Flapjack', 8), dish('Toast', 1)], [beans]);
    const cards = cardsOf(numbersToPublish(file, null));
    const pictures = cards.filter(({ kind }) => kind === 'thumbnail');
    // 400 g at 80 kcal and 12 g in 100 g: 320 kcal and 48 g, an eighth of it 40 kcal and 6 g (by hand).
    expect(
      pictures.map(({ kicker, lead, others }) => [kicker, lead?.number, others[0]?.number]),
    ).toEqual([
      ['1 of 8 portions', '40', '6'],
      ['the whole dish', '320', '48'],
      ['the whole dish', '320', '48'],
      ['the dishes shown, all that was made', '640', '96'],
    ]);
    expect(cards.find(({ kind }) => kind === 'day')?.kicker).toBe('all that was made');
    const said = structuredClone(file);
    for (const segment of said.episode.segments.slice(0, 1)) segment.eaten = { num: 1, den: 8 };
    const day = cardsOf(numbersToPublish(said, null)).find(({ kind }) => kind === 'day');
    expect([day?.kicker, day?.lead?.number]).toEqual(['what was eaten', '360']);
  });

  test('a range that begins with the number itself is whole; one that is the number is not said again', () => {
    const beans = aFood('f', { energyKcal: '80', protein: '12.1', fat: '0', carbohydrate: '2.00' });
    const planned = { lowMg: 97_000, valueMg: 100_000, highMg: 104_000 };
    const file = aFile([aDish('a', aRecipe('r', [grams('l', 'f', 100, { planned })]))], [beans]);
    const [dish] = cardsOf(numbersToPublish(file, null));
    // 11.7 to 12.6 g, of which both ends round to 12 and 13 (by hand).
    const [protein, , carbohydrate] = dish?.others ?? [];
    expect([protein?.number, protein?.range]).toEqual(['12', 'likely 12–13']);
    expect([carbohydrate?.number, carbohydrate?.range]).toEqual(['2', '']);
  });

  test('every ingredient of the demo is on its card', () => {
    const file = demo();
    const cards = cardsOf(numbersToPublish(file, null));
    for (const { id, recipe } of file.episode.segments) {
      if (!recipe) continue;
      const card = cards.find((each) => each.kind === 'ingredients' && each.segmentId === id);
      expect(card?.rows).toHaveLength(recipe.lines.length);
    }
  });

  test('in the EU energy is in kJ too (Regulation (EU) 1169/2011, Annex XV)', () => {
    const [dish] = cardsOf(
      numbersToPublish({ ...demo(), episode: { ...demo().episode, region: 'EU' } }, null),
    );
    expect(dish?.lead).toMatchObject({ unit: 'kcal' });
    expect(dish?.lead?.label ?? '').toMatch(/^((at least )?\d+ kJ)?$/);
  });
});

describe('nothing is lost and all fits', () => {
  test.each(LOOKS)('of the demo at $size on $ground', (look) => {
    for (const card of draftCards()) {
      if (card.kind !== 'thumbnail') expectWhole(card, look);
    }
  });

  // The longest names of the reference table (USDA SR28) that name no brand.
  const longest = loadSr28()
    .map(({ name }) => name)
    .filter((name) => !/[A-Z]{3}|'S\b/.test(name))
    .sort((a, b) => b.length - a.length)
    .slice(0, 30);

  test('with the longest names of the reference table', () => {
    expect(longest[0]?.length).toBeGreaterThan(100);
    const rows = longest.map((words) => ({ words, amount: '1,250 g cooked, with peel and trim' }));
    for (const look of LOOKS) {
      const card = swapTableCard({ kicker: 'a dish', title: longest[0] ?? '', rows }, 'draft');
      expect(drawCard(card, look).length).toBeGreaterThan(1);
      expectWhole(card, look);
      const words = { before: longest[1] ?? '', after: longest[2] ?? '', unit: '' };
      expectWhole(correctionCard({ title: 'Words for numbers', ...words }, 'draft'), look);
      const put = {
        title: longest[0] ?? '',
        before: 'at least 1,409',
        after: 'at least 12,345',
        unit: 'kcal',
      };
      expectWhole(
        correctionCard({ ...put, reason: longest.slice(0, 4).join('; '), on: '30 Nov' }, 'broken'),
        look,
      );
    }
  });

  test('with an amount beside words of blanks alone', () => {
    for (const look of LOOKS) {
      const rows = [{ words: ' ', amount: '8' }];
      expectWhole(swapTableCard({ title: 'a', rows }, 'draft'), look);
    }
  });

  test('with names by chance', () => {
    const anyLetter = fc.constantFrom(...'abcdefghij klmnop qrstuvwxyz ÅÉßñMW0123456789.,()%½&<"');
    const name = fc.string({ unit: anyLetter, minLength: 1, maxLength: 160 });
    const rows = fc.array(
      fc.record({ words: name, amount: fc.string({ unit: anyLetter, maxLength: 40 }) }),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(name, rows, fc.constantFrom(...LOOKS), (title, of, look) => {
        expectWhole(swapTableCard({ title, rows: of }, 'draft'), look);
      }),
      { numRuns: 25 },
    );
  });

  test.each(['1280x720'] satisfies CardSize[])('of numbers for the thumbnail at %s', (size) => {
    for (const card of draftCards()) {
      if (card.kind !== 'thumbnail') continue;
      const { text } = cardFrame(size);
      for (const ground of CARD_GROUNDS) {
        const pages = drawCard(card, { size, ground, colours: COLOURS });
        expect(pages).toHaveLength(1);
        for (const { left, right, words } of pages.flatMap(linesIn)) {
          expect(left, words).toBeGreaterThanOrEqual(text.left);
          expect(right, words).toBeLessThanOrEqual(text.right);
        }
      }
    }
  });
});
