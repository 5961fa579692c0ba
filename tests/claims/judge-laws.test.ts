import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Judged } from '#lib/claims/judged';
import { episodeFigures, type Figures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { publishedNumbers, publishedStep, type NumberScope } from '#lib/figures/published-numbers';
import type { EpisodeFile } from '#lib/episode/schema';
import { anyEpisode } from '../figures/compiled-kitchens';
import { aDish, aFile, aFood, aReading, aRecipe, grams } from '../support/build';
import { oneOf, uniform, whole } from '../support/uniform';
import { rowsOf } from './edit-build';

const NUTRIENTS = ['energyKcal', 'protein', 'fat', 'carbohydrate', 'fibre'] as const;
type Said = (typeof NUTRIENTS)[number];

/** A number with its noun. */
const NOUNS: Readonly<Record<Said, (number: string) => string>> = {
  energyKcal: (number) => `${number} calories`,
  protein: (number) => `${number} grams of protein`,
  fat: (number) => `${number} grams of fat`,
  carbohydrate: (number) => `${number} grams of carbs`,
  fibre: (number) => `${number} grams of fiber`,
};

const HEDGES = {
  none: '',
  about: 'about ',
  justOver: 'just over ',
  almost: 'almost ',
  atLeast: 'at least ',
  atMost: 'at most ',
  under: 'under ',
} as const;
type Hedged = keyof typeof HEDGES;

/** An amount of the episode, and how it is said. */
interface Part {
  readonly scope: NumberScope;
  readonly share: number;
  readonly words: (said: string) => string;
}

const PARTS: readonly Part[] = [
  {
    scope: { kind: 'whole', segmentId: 'd0' },
    share: 1,
    words: (said) => `The whole thing has ${said}.`,
  },
  {
    scope: { kind: 'whole', segmentId: 'd0' },
    share: 1 / 2,
    words: (said) => `Half of it has ${said}.`,
  },
  {
    scope: { kind: 'per100g', segmentId: 'd0' },
    share: 1,
    words: (said) => `Per 100 g it has ${said}.`,
  },
  { scope: { kind: 'day' }, share: 1, words: (said) => `For the day it is ${said}.` },
];

const figuresOf = (file: EpisodeFile, scope: NumberScope): Figures | null => {
  const all = episodeFigures(file);
  if (scope.kind === 'day') return all.day;
  return all.dishes[0]?.[scope.kind === 'per100g' ? 'per100g' : 'whole'] ?? null;
};

/**
 * What a number covers, written a second time from the definition: half of its last digit, five where it is said aloud,
 * from 100 on and ends in 0; "about" 5 %, and at least 5 kcal or 1 g.
 */
function covered(
  amount: number,
  decimals: number,
  hedge: Hedged,
  nutrient: Said,
  spoken: boolean,
): readonly [low: number, high: number] {
  const half = spoken && amount >= 100 && amount % 10 === 0 ? 5 : 0.5 / 10 ** decimals;
  const about = Math.max(half, nutrient === 'energyKcal' ? 5 : 1, amount * 0.05);
  switch (hedge) {
    case 'none':
      return [amount - half, amount + half];
    case 'about':
      return [amount - about, amount + about];
    case 'justOver':
      return [amount, amount + about];
    case 'almost':
      return [amount - about, amount];
    case 'atLeast':
      return [amount, Infinity];
    case 'atMost':
    case 'under':
      return [-Infinity, amount];
  }
}

interface Case {
  readonly file: EpisodeFile;
  readonly part: Part;
  readonly nutrient: Said;
  readonly figure: Figure;
  readonly hedge: Hedged;
  readonly amount: number;
  readonly decimals: number;
  readonly spoken: boolean;
  readonly row: Judged;
}

/** Mostly small dishes whose figures are known, and some with all that may be missing. */
function someEpisode(random: () => number): EpisodeFile {
  if (random() < 0.25) return withTitles(anyEpisode(random, { dishes: 1, lines: 3, plain: true }));
  const printed = (most: number) => (random() * most).toFixed(oneOf(random, [0, 1, 2]));
  const foods = ['f0', 'f1', 'f2'].map((id) => {
    const values = Object.fromEntries(
      NUTRIENTS.map((nutrient) => [nutrient, printed(nutrient === 'energyKcal' ? 400 : 30)]),
    );
    const blank = random() < 0.1 ? { [oneOf(random, NUTRIENTS)]: '' } : {};
    return aFood(id, { ...values, ...blank });
  });
  const lines = foods.map(({ id }) =>
    grams(`line ${id}`, id, whole(random, 5, 260), {
      match: random() < 0.03 ? 'provisional' : 'confirmed',
    }),
  );
  const weighings = [aReading('done', 'finished', whole(random, 200, 700))];
  const portions = [{ id: 'two', kind: 'count' as const, name: '', of: 2 }];
  const dish = aDish('d0', aRecipe('r0', lines, { weighings, portions }), { title: 'Quay stew' });
  const energyStep = oneOf(random, [1, 5, 10] as const);
  return aFile([dish], foods, { episode: { energyStep }, resolutionMg: oneOf(random, [1, 1000]) });
}

/** An episode, an amount of it, and a number that is near its figure, near an end of it, or anything. */
function aCase(seed: number): Case | null {
  const random = uniform(seed);
  const file = someEpisode(random);
  const part = oneOf(random, PARTS);
  const nutrient = oneOf(random, NUTRIENTS);
  const own = figuresOf(file, part.scope)?.[nutrient];
  if (!own) return null;
  const times = (value: number | null) => (value === null ? null : value * part.share);
  const figure: Figure = {
    ...own,
    value: own.value * part.share,
    low: times(own.low),
    high: times(own.high),
    likelyLow: times(own.likelyLow),
    likelyHigh: times(own.likelyHigh),
  };
  const around = oneOf(random, [
    figure.value,
    figure.value * (0.5 + random()),
    figure.low ?? figure.value,
    figure.high ?? figure.value,
    (figure.likelyLow ?? figure.value) - 1,
    (figure.likelyHigh ?? figure.value) + 1,
    whole(random, 1, 900),
  ]);
  const decimals = nutrient !== 'energyKcal' && random() < 0.3 ? 1 : 0;
  const step = random() < 0.3 ? 10 : 1 / 10 ** decimals;
  const amount = Number((Math.round(around / step) * step).toFixed(decimals));
  if (!(amount > 0) || amount > 5000) return null;
  const hedge = oneOf(random, Object.keys(HEDGES) as Hedged[]);
  const spoken = random() < 0.6;
  const number = HEDGES[hedge] + amount.toFixed(decimals);
  const words = part.words(NOUNS[nutrient](number));
  const rows = rowsOf(file, words, spoken ? 'captions' : 'description');
  const row = rows.find(({ statement }) => statement.kind === 'nutrient');
  if (!row) throw new Error(`nothing was read of: ${words}`);
  return { file, part, nutrient, figure, hedge, amount, decimals, spoken, row };
}

function withTitles(file: EpisodeFile): EpisodeFile {
  const segments = file.episode.segments.map((segment) => ({ ...segment, title: 'Quay stew' }));
  return { ...file, episode: { ...file.episode, segments } };
}

const cases = fc.integer({ min: 0, max: 2 ** 31 - 1 });
const RUNS = 160;

/** Room for the last digits of floating point. */
const NOISE = 1e-9;

// The verdicts are the project's own definition (MODEL C.4, D.1, D.2); no source.
describe('a stated amount of a nutrient', () => {
  test('whose number misses the hard bounds never agrees', () => {
    let agreed = 0;
    let missed = 0;
    fc.assert(
      fc.property(cases, (seed) => {
        const made = aCase(seed);
        if (!made) return;
        const { file, part, nutrient, figure, hedge, amount, decimals, spoken, row } = made;
        const [low, high] = covered(amount, decimals, hedge, nutrient, spoken);
        const outside =
          (figure.low !== null && high < figure.low - NOISE) ||
          (figure.high !== null && low > figure.high + NOISE);
        if (row.verdict === 'agrees') agreed += 1;
        if (!outside) return;
        missed += 1;
        if (row.verdict !== 'agrees') return;
        // Only the number that is published for it, rounded as it says there.
        expect(row.remark).toBe('tally');
        const numbers = publishedNumbers(file, episodeFigures(file));
        const published = numbers(nutrient, part.scope);
        const step = publishedStep(nutrient, file.episode.energyStep);
        const meets =
          amount + step / 2 >= (figure.low ?? 0) - NOISE &&
          amount - step / 2 <= (figure.high ?? Infinity) + NOISE;
        expect(meets || published.onlyByRounding).toBe(true);
      }),
      { numRuns: RUNS },
    );
    // The law was put to the test on both sides.
    expect(agreed).toBeGreaterThan(RUNS / 50);
    expect(missed).toBeGreaterThan(RUNS / 10);
  });

  test('agrees only with its value covered, or its whole likely range where it is one-sided', () => {
    fc.assert(
      fc.property(cases, (seed) => {
        const made = aCase(seed);
        if (!made || made.row.verdict !== 'agrees' || made.row.remark === 'tally') return;
        const { nutrient, figure, hedge, amount, decimals, spoken } = made;
        const [low, high] = covered(amount, decimals, hedge, nutrient, spoken);
        if (hedge === 'atLeast' || hedge === 'atMost' || hedge === 'under') {
          const [from, to] = [figure.likelyLow, figure.likelyHigh];
          if (hedge === 'atLeast') expect(from).toBeGreaterThanOrEqual(amount - NOISE);
          else expect(to).toBeLessThanOrEqual(amount + NOISE);
          return;
        }
        expect([figure.low, figure.high]).not.toContain(null);
        expect(figure.value).toBeGreaterThanOrEqual(low - NOISE);
        expect(figure.value).toBeLessThanOrEqual(high + NOISE);
      }),
      { numRuns: RUNS },
    );
  });

  test('is off only where it misses the likely range', () => {
    fc.assert(
      fc.property(cases, (seed) => {
        const made = aCase(seed);
        if (!made || made.row.verdict !== 'off') return;
        const { nutrient, figure, hedge, amount, decimals, spoken, row } = made;
        const [low, high] = covered(amount, decimals, hedge, nutrient, spoken);
        const misses =
          (figure.likelyLow !== null && high <= figure.likelyLow + NOISE) ||
          (figure.likelyHigh !== null && low >= figure.likelyHigh - NOISE);
        expect(misses).toBe(true);
        expect(row.difference).not.toBeNull();
      }),
      { numRuns: RUNS },
    );
  });

  test('that is open is never anything but unknown', () => {
    fc.assert(
      fc.property(cases, (seed) => {
        const made = aCase(seed);
        if (made?.figure.low !== null || made.figure.high !== null) return;
        expect(made.row.verdict).toBe('unknown');
        expect(made.row.why).toMatch(/^can’t say: /);
      }),
      { numRuns: RUNS },
    );
  });

  test('agrees once it is said as it is proposed', () => {
    let proposed = 0;
    fc.assert(
      fc.property(cases, (seed) => {
        const made = aCase(seed);
        if (!made?.row.sayInstead) return;
        proposed += 1;
        const { file, part, spoken, row } = made;
        const words = part.words(row.sayInstead ?? '');
        const [again] = rowsOf(file, words, spoken ? 'captions' : 'description');
        expect([words, again?.verdict, again?.why]).toEqual([words, 'agrees', again?.why]);
      }),
      { numRuns: RUNS },
    );
    expect(proposed).toBeGreaterThan(RUNS / 10);
  });

  test('that is made of a published number agrees', () => {
    let made = 0;
    fc.assert(
      fc.property(cases, (seed) => {
        const random = uniform(seed);
        const file = someEpisode(random);
        const figures = episodeFigures(file);
        const numbers = publishedNumbers(file, figures);
        const nutrient = oneOf(random, NUTRIENTS);
        for (const part of PARTS.filter(({ share }) => share === 1)) {
          if (!figuresOf(file, part.scope)) continue;
          const { number, status, provisional } = numbers(nutrient, part.scope);
          if (number === null || status !== 'known' || provisional.length > 0) continue;
          if (Number(number) === 0) continue;
          made += 1;
          const words = part.words(NOUNS[nutrient](number));
          const [row] = rowsOf(file, words, 'description');
          expect([words, row?.verdict]).toEqual([words, 'agrees']);
        }
      }),
      { numRuns: 60 },
    );
    expect(made).toBeGreaterThan(20);
  });
});
