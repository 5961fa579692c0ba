import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlacedStatement } from '#lib/claims/contradict/contradiction';
import { contradictions } from '#lib/claims/contradictions';
import type { Statement } from '#lib/claims/statement';
import { dishesOf } from '#lib/episode/context';
import { readStatements } from '#lib/claims/read-statements';
import type { TextKind } from '#lib/episode/edit-schema';
import type { Episode } from '#lib/episode/schema';
import { aDish, aFile, aRecipe } from '../support/build';

/*
 * Invented texts, worked by hand. What a said number covers is the project’s own definition (MODEL D.1); 4, 4 and 9 kcal
 * a gram are 21 CFR 101.9(c)(1)(i)(B).
 */

const STEW = aDish('stew', aRecipe('stew-recipe', []), { title: 'Barley stew' });
const BAKE = aDish('bake', aRecipe('bake-recipe', []), { title: 'Lentil bake' });
const FLAN = aDish('flan', aRecipe('flan-recipe', []), { title: 'Plum flan' });

function episodeOf(
  segments = [STEW],
  more: Partial<Episode> = {},
): Pick<Episode, 'segments' | 'region' | 'anythingElse'> {
  return aFile(segments, [], { episode: { anythingElse: { kind: 'nothing' }, ...more } }).episode;
}

interface Said {
  readonly text: string;
  readonly kind?: TextKind;
  readonly segmentId?: string | null;
}

function rowsOf(texts: readonly Said[], episode = episodeOf()): PlacedStatement[] {
  const titles = new Map(dishesOf(episode.segments).map(({ id, title }) => [id, title]));
  return texts.flatMap(({ text, kind = 'captions', segmentId = 'stew' }, index) => {
    const form = kind === 'thumbnail' ? 'title' : kind;
    const dish = segmentId === null ? undefined : titles.get(segmentId);
    return readStatements(text, { form, dish }).map((statement, at) => ({
      id: `t${index}:${at}`,
      statement,
      place: { textId: `t${index}`, kind, line: 1, startMs: null, endMs: null, segmentId },
    }));
  });
}

const found = (texts: readonly Said[], episode = episodeOf()) =>
  contradictions(rowsOf(texts, episode), episode);
const ofPrices = (text: string, of: number) => {
  const portions = [{ id: 'p', kind: 'count' as const, name: 'a slice', of }];
  const dish = aDish('stew', aRecipe('stew-recipe', [], { portions }), { title: 'Barley stew' });
  const episode = episodeOf([dish]);
  return contradictions(rowsOf([{ text }], episode), episode, () => text)
    .filter(({ kind }) => kind === 'price')
    .map((each) => each.words);
};
const words = (texts: readonly Said[], episode = episodeOf()) =>
  found(texts, episode).map((each) => `${each.kind}: ${each.words}`);

describe('two values for one thing', () => {
  it('are found across texts, each with its places', () => {
    const [one, ...others] = found([
      { text: 'The whole pot is 1,400 calories.' },
      { text: 'The whole pot: 1,350 calories', kind: 'description' },
      { text: 'So that is 1,400 calories for the whole pot.' },
    ]);
    expect(others).toEqual([]);
    expect(one?.words).toBe('1,400 calories and 1,350 calories are said of the same thing');
    expect(one?.sides.map(({ said }) => said.map(({ id }) => id))).toEqual([
      ['t0:0', 't2:0'],
      ['t1:0'],
    ]);
  });

  it.each([
    ['another part', 'A portion is 400 calories.', 'Half of it is 500 calories.'],
    ['another dish', 'A portion is 400 calories.', null],
    ['the same when rounded aloud', 'A portion is 640 calories.', 'A portion is 638 calories.'],
    ['softened', 'A portion is about 600 calories.', 'A portion is 620 calories.'],
    ['one-sided', 'A portion is under 650 calories.', 'A portion is 640 calories.'],
    ['another nutrient', 'A portion has 40 grams of protein.', 'A portion has 30 grams of fat.'],
    ['a whole and a portion of it', 'This is 1,600 calories.', 'This is 400 calories.'],
  ])('are no contradiction where they are %s', (_why, first, second) => {
    const other = second ?? first.replace('400', '900');
    const episode = episodeOf([STEW, BAKE]);
    expect(
      words(
        [{ text: first }, { text: other, segmentId: second === null ? 'bake' : 'stew' }],
        episode,
      ),
    ).toEqual([]);
  });

  it('are a contradiction where the hedge does not reach', () => {
    expect(
      words([{ text: 'A portion is under 600 calories.' }, { text: 'A portion is 640 calories.' }]),
    ).toEqual(['two: under 600 calories and 640 calories are said of the same thing']);
  });

  it('are none in one breath where the one may be of a part of the other', () => {
    const text = 'All four are 1,198 calories, so a pot is three hundred calories.';
    expect(words([{ text }])).toEqual([]);
  });

  it('are none where nobody knows the dish', () => {
    expect(
      words([{ text: 'A portion is 400 calories. A portion is 500 calories.', segmentId: null }]),
    ).toEqual([]);
  });
});

describe('a portion and a dish without how much of it', () => {
  it('are one thing where neither can be a part of the other', () => {
    expect(words([{ text: 'A bowl is 310 calories.' }, { text: 'This is 360 calories.' }])).toEqual(
      ['two: 310 calories and 360 calories are said of the same thing'],
    );
  });

  it('are two where the dish may be several portions', () => {
    expect(words([{ text: 'A bowl is 120 calories.' }, { text: 'This is 360 calories.' }])).toEqual(
      [],
    );
  });
});

describe('two counts of what a dish makes', () => {
  it('in two texts are a contradiction', () => {
    expect(
      words([{ text: 'This makes three portions.' }, { text: 'Serves 2', kind: 'description' }]),
    ).toEqual(['portions: 3 portions and 2 portions are said of the same dish']);
  });

  it.each([
    ['the same', [{ text: 'This makes two portions.' }, { text: 'Serves 2' }]],
    ['a range', [{ text: 'This makes two portions.' }, { text: 'Serves 2 to 3' }]],
    ['in one text', [{ text: 'This makes two portions. Doubled it makes four portions.' }]],
    ['of two dishes', [{ text: 'Serves 2' }, { text: 'Serves 3', segmentId: 'bake' }]],
    ['of parts of another kind', [{ text: 'Serves 4' }, { text: 'Cut it into eight slices.' }]],
  ])('are none where they are %s', (_why, said) => {
    expect(words(said, episodeOf([STEW, BAKE]))).toEqual([]);
  });
});

describe('prices', () => {
  it('of all and of one of so many have to fit', () => {
    const said = 'The whole stew came to £4.80, so that is 60p a slice.';
    expect(ofPrices(said, 12)).toEqual(['one of 12 of £4.80 is 0.40, not 60p']);
    expect(ofPrices(said, 8)).toEqual([]);
    // Rounded to the penny, and softened.
    expect(ofPrices('The whole stew came to £5.00, so that is 42p a slice.', 12)).toEqual([]);
    expect(ofPrices('The whole stew came to £5.00, about 40p a slice.', 12)).toEqual([]);
  });

  it('that are added have to come to their sum', () => {
    expect(
      ofPrices('Breakfast was $2.10, lunch was $3.20 and dinner was $4.50, so that is $8.80.', 4),
    ).toEqual(['$2.10, $3.20, $4.50 come to 9.80, not $8.80']);
    expect(
      ofPrices('Breakfast was $2.10, lunch was $3.20 and dinner was $4.50, so that is $9.80.', 4),
    ).toEqual([]);
    // One of the numbers is not read as a price: the list may be longer.
    expect(ofPrices('It was $2.10, and 3 something, and $4.50, so that is $8.80.', 4)).toEqual([]);
    expect(ofPrices('It was $2.10 once. Then $4.50. That is $8.80.', 4)).toEqual([]);
  });
});

describe('half', () => {
  it('that is not half is told with what half would be', () => {
    expect(
      words([{ text: 'The whole tray is 640 calories, so half of it is 400 calories.' }]),
    ).toEqual(['half: half of 640 calories is 320 calories, not 400 calories']);
  });

  it('within what both round to is none', () => {
    expect(
      words([{ text: 'The whole tray is 641 calories, half of it is 320 calories.' }]),
    ).toEqual([]);
    expect(
      words([{ text: 'The whole tray is about 650 calories, half of it is 320 calories.' }]),
    ).toEqual([]);
  });
});

describe('one of so many', () => {
  it('that does not come to the whole is told', () => {
    expect(
      words([
        {
          text: 'The whole pot is 1,400 calories. It makes 5 portions. A portion is 350 calories.',
        },
      ]),
    ).toEqual(['each: 5 times 350 calories is 1,750 calories, not 1,400 calories']);
  });

  it('is found without any dish that is known', () => {
    const text = 'The whole pot is 1,400 calories. It makes 5 portions. A portion is 350 calories.';
    expect(words([{ text, segmentId: null }], episodeOf([]))).toHaveLength(1);
  });

  it('that comes to it when rounded is none', () => {
    // 12 times 85.4 is 1,025.
    expect(
      words([
        { text: 'The whole tray is 1,025 calories. Makes 12 pieces. Each piece is 85 calories.' },
      ]),
    ).toEqual([]);
  });

  it('goes by the dish’s own portions where none are said', () => {
    const recipe = aRecipe('stew-recipe', [], {
      portions: [{ id: 'p', kind: 'count', name: 'a bowl', of: 4 }],
    });
    const episode = episodeOf([{ ...STEW, recipe }]);
    const text = 'The whole pot is 1,600 calories. A portion is 500 calories.';
    expect(words([{ text }], episode)).toEqual([
      'each: 4 times 500 calories is 2,000 calories, not 1,600 calories',
    ]);
  });
});

describe('a day', () => {
  const segments = [STEW, BAKE, FLAN];
  const dishes = [
    { text: 'This is 500 calories.' },
    { text: 'This is 700 calories.', segmentId: 'bake' },
    { text: 'This is 310 calories.', segmentId: 'flan' },
  ];
  const day = (calories: string) => ({
    text: `The whole day is ${calories} calories.`,
    segmentId: null,
  });

  it('that is not its dishes is told', () => {
    expect(words([...dishes, day('1,850')], episodeOf(segments))).toEqual([
      'day: the dishes come to 1,510 calories, and the day is said to be 1,850 calories',
    ]);
  });

  it('that is said twice is told once', () => {
    const said = words([...dishes, day('1,850'), day('1,850'), day('1,900')], episodeOf(segments));
    expect(said.filter((each) => each.startsWith('day:'))).toEqual([
      'day: the dishes come to 1,510 calories, and the day is said to be 1,850 calories or 1,900 calories',
    ]);
  });

  it('that is its dishes, as far as each is rounded, is none', () => {
    // Aloud 500, 700 and 310 stand for 495–505, 695–705 and 305–315.
    expect(words([...dishes, day('1,520')], episodeOf(segments))).toEqual([]);
  });

  it('may be more than its dishes while something else may have been eaten', () => {
    const open = episodeOf(segments, { anythingElse: null });
    expect(words([...dishes, day('1,850')], open)).toEqual([]);
    expect(words([...dishes, day('1,200')], open)).toHaveLength(1);
  });

  it('is not added up while a dish says nothing', () => {
    expect(words([...dishes.slice(0, 2), day('1,850')], episodeOf(segments))).toEqual([]);
  });
});

describe('macros', () => {
  it('that are far from the calories are told', () => {
    // 4 × 42 + 4 × 18 + 9 × 11 = 339.
    expect(
      words([
        { text: 'A portion: 450 kcal, 42 g protein, 18 g carbs, 11 g fat', kind: 'description' },
      ]),
    ).toEqual([
      'energy: 42 g of protein, 18 g of carbohydrate and 11 g of fat come to 339 calories by 4, 4 and 9 a gram, not 450 calories; alcohol, sweeteners or much fibre may be why',
    ]);
  });

  it('that fibre, rounding or a table’s own factors may explain are none', () => {
    for (const energy of [290, 320, 339, 360, 390]) {
      expect(
        words([
          {
            text: `A portion: ${energy} kcal, 42 g protein, 18 g carbs, 11 g fat`,
            kind: 'description',
          },
        ]),
      ).toEqual([]);
    }
  });
});

describe('a title', () => {
  it('that nothing in the captions comes to is told', () => {
    expect(
      words([
        { text: '400 calorie dinner', kind: 'title' },
        { text: 'A portion is 460 calories.' },
        { text: 'The whole pot is 1,840 calories.' },
      ]),
    ).toEqual([
      'title: the title says 400 calories; what is said comes nearest to it with 460 calories',
    ]);
  });

  it('that something in them comes to is none', () => {
    expect(
      words([
        { text: '460 calorie dinner', kind: 'title' },
        { text: 'A portion is 460 calories. The whole pot is 1,840 calories.' },
      ]),
    ).toEqual([]);
  });
});

/** A statement of calories that was made from a true number, rounded or softened so that it stays true of it. */
const trueOf = (
  value: number,
  scope: 'whole' | 'portion' | 'half',
  id: string,
  style: number,
): PlacedStatement => {
  const round = Math.round(value);
  const [low, high, hedge] = (
    [
      [round, round, 'none'],
      [Math.round(value * 1.03), Math.round(value * 1.03), 'about'],
      [Math.ceil(value) + 1, Math.ceil(value) + 1, 'under'],
      [Math.floor(value), Math.floor(value), 'atLeast'],
      [Math.floor(value) - 3, Math.ceil(value) + 3, 'between'],
    ] as const
  )[style] ?? [round, round, 'none'];
  const statement: Statement = {
    kind: 'nutrient',
    nutrient: 'energyKcal',
    unit: 'kcal',
    low,
    high,
    hedge,
    scope,
    start: 0,
    end: 1,
    words: '',
    tags: [],
    how: [],
  };
  return {
    id,
    statement,
    place: {
      textId: id,
      kind: 'description',
      line: 1,
      startMs: null,
      endMs: null,
      segmentId: 'stew',
    },
  };
};

describe('two hours of it', () => {
  it('are looked through without growing beyond what is said', () => {
    const [value, count] = rowsOf([{ text: 'A portion is 400 calories. It makes 4 portions.' }]);
    if (value?.statement.kind !== 'nutrient' || count?.statement.kind !== 'portions') {
      throw new Error('nothing read');
    }
    const [calories, portions] = [value.statement, count.statement];
    const rows = Array.from({ length: 2000 }, (_, at): PlacedStatement[] => {
      const said = { low: 400 + (at % 40), high: 400 + (at % 40), start: at * 90 };
      const many = { low: 2 + (at % 7), high: 2 + (at % 7), start: at * 90 + 40 };
      return [
        { ...value, id: `v${at}`, statement: { ...calories, ...said } },
        { ...count, id: `c${at}`, statement: { ...portions, ...many } },
      ];
    }).flat();
    const day = rowsOf([{ text: 'The whole day is 2,000 calories.', segmentId: null }]);
    const all = contradictions([...rows, ...day], episodeOf([STEW, BAKE]));
    // One for all values of a portion.
    expect(all.map(({ kind }) => kind)).toEqual(['two']);
  });
});

describe('what is true', () => {
  it('never contradicts itself, however it is rounded or softened', () => {
    const style = fc.integer({ min: 0, max: 4 });
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 4000, noNaN: true }),
        fc.integer({ min: 2, max: 24 }),
        fc.array(style, { minLength: 6, maxLength: 6 }),
        (whole, count, styles) => {
          const recipe = aRecipe('stew-recipe', [], {
            portions: [{ id: 'p', kind: 'count', name: 'a portion', of: count }],
          });
          const of = (index: number) => styles[index] ?? 0;
          const rows = [
            trueOf(whole, 'whole', 'a', of(0)),
            trueOf(whole, 'whole', 'b', of(1)),
            trueOf(whole / 2, 'half', 'c', of(2)),
            trueOf(whole / 2, 'half', 'd', of(3)),
            trueOf(whole / count, 'portion', 'e', of(4)),
            trueOf(whole / count, 'portion', 'f', of(5)),
          ];
          expect(contradictions(rows, episodeOf([{ ...STEW, recipe }]))).toEqual([]);
        },
      ),
    );
  });

  it('and a number far from it does, whichever way it is said', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 200, max: 4000, noNaN: true }),
        fc.double({ min: 1.2, max: 2, noNaN: true }),
        (whole, times) => {
          const rows = [trueOf(whole, 'whole', 'a', 0), trueOf(whole * times, 'whole', 'b', 0)];
          expect(contradictions(rows, episodeOf())).toHaveLength(1);
        },
      ),
    );
  });
});
