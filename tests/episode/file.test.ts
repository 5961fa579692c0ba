import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { episodeFileText, parseEpisodeData, parseEpisodeFile } from '#lib/episode/file';
import type { SaidLine } from '#lib/episode/said-line';
import { stableJson } from '#lib/episode/stable-json';
import { randomDay } from '../shoot/random-day';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, aTalk, grams } from '../support/build';

const food = aFood('oats', { energyKcal: '379' });
const good = aFile(
  [aTalk('intro'), aDish('dish', aRecipe('recipe', [grams('line', 'oats', 40)]))],
  [food],
);

/** A copy of the good file with one place changed, as a person's slip would. */
function broken(change: (file: typeof good) => void): unknown {
  const copy = structuredClone(good);
  change(copy);
  return copy;
}

function faults(data: unknown): string[] {
  const result = parseEpisodeData(data);
  return result.ok ? [] : result.problems.map((problem) => `${problem.path}: ${problem.code}`);
}

function saidLine(id: string, scope: SaidLine['scope']): SaidLine {
  const numbers = [{ nutrient: 'energyKcal', amount: 640, hedge: 'exact', value: 640 } as const];
  return { id, at: '2026-11-14T11:40:00Z', scope, text: 'It has 640 calories.', numbers };
}

describe('the episode file', () => {
  it('reads back what it writes', () => {
    fc.assert(
      fc.property(fc.nat(100_000), (seed) => {
        const file = randomDay(seed);
        expect(parseEpisodeFile(episodeFileText(file))).toEqual({ ok: true, value: file });
      }),
      { numRuns: 25 },
    );
  });

  it('writes the same bytes whatever the order of keys', () => {
    const reversed = (data: unknown): unknown => {
      if (Array.isArray(data)) return data.map(reversed);
      if (data === null || typeof data !== 'object') return data;
      return Object.fromEntries(
        Object.entries(data)
          .reverse()
          .map(([key, value]) => [key, reversed(value)]),
      );
    };
    expect(stableJson(reversed(good))).toBe(stableJson(good));
    expect(stableJson(good).endsWith('}\n')).toBe(true);
  });

  it('says at once what is no episode file', () => {
    const one = (text: string) => {
      const result = parseEpisodeFile(text);
      return result.ok ? null : result.problems[0];
    };
    expect(one('{"format": ')).toMatchObject({ path: '', code: 'not-json' });
    expect(one('[]')).toMatchObject({ code: 'not-an-episode' });
    expect(one('{"format":"something else"}')).toMatchObject({
      path: 'format',
      code: 'not-an-episode',
    });
    expect(one('{"format":"scale-and-slate/episode","version":99}')).toMatchObject({
      path: 'version',
      code: 'version',
    });
    expect(parseEpisodeFile(`\uFEFF${episodeFileText(good)}`).ok).toBe(true);
  });

  it('says in plain words what is missing, what does not fit and which lines break', () => {
    const data = broken(({ episode, kitchen }) => {
      Object.assign(kitchen, { zone: 'Atlantis/Harbour', burners: 'three' });
      Object.assign(episode.segments[0] ?? {}, { title: 'One\n0:00 Two' });
      Object.assign(episode, { hook: undefined });
    });
    const result = parseEpisodeData(data);
    expect(
      result.ok ? [] : result.problems.map(({ path, message }) => `${path}: ${message}`),
    ).toEqual([
      'kitchen.zone: must be an IANA time zone, as in "Europe/Copenhagen"',
      'kitchen.burners: takes a number, not text',
      'episode.hook: is missing: it takes text',
      'episode.segments[0].title: must be one line, without line breaks',
    ]);
  });

  it('tells every fault by its path, not only the first', () => {
    const data = broken(({ episode, kitchen }) => {
      Object.assign(episode, { title: '', region: 'Atlantis' });
      Object.assign(kitchen, { burners: -1 });
      Object.assign(episode.segments[1]?.recipe?.lines[0] ?? {}, {
        state: 'lukewarm',
        asBought: 'yes',
      });
    });
    expect(faults(data).map((fault) => fault.split(':')[0])).toEqual([
      'kitchen.burners',
      'episode.title',
      'episode.region',
      'episode.segments[1].recipe.lines[0].state',
      'episode.segments[1].recipe.lines[0].asBought',
    ]);
  });

  it.each([
    [
      'a food that is not there',
      'episode.segments[1].recipe.lines[0].foodId: unknown-id',
      (f: typeof good) => {
        Object.assign(f.episode.segments[1]?.recipe?.lines[0] ?? {}, { foodId: 'nowhere' });
      },
    ],
    [
      'a scale that is not there',
      'episode.segments[1].recipe.weighings[0].scaleId: unknown-id',
      (f: typeof good) => {
        f.episode.segments[1]?.recipe?.weighings.push(aReading('w', 'raw', 5, { scaleId: 'lost' }));
      },
    ],
    [
      'a container heavier than what is in it',
      'episode.segments[1].recipe.weighings[0].tareMg: order',
      (f: typeof good) => {
        f.episode.segments[1]?.recipe?.weighings.push(aReading('w', 'raw', 5, { tareMg: 6000 }));
      },
    ],
    [
      'the same id twice',
      'episode.segments: duplicate-id',
      (f: typeof good) => {
        f.episode.segments.push(aTalk('intro'));
      },
    ],
    [
      'two foods with one version id',
      'foods[].version: duplicate-id',
      (f: typeof good) => {
        f.foods.push({ ...food, id: 'other' });
      },
    ],
    [
      'a reading that is more than shared out',
      'episode.segments[1].recipe.weighings[0].shares: too-much',
      (f: typeof good) => {
        const all = { lineId: 'line', share: { num: 2, den: 3 } };
        f.episode.segments[1]?.recipe?.weighings.push(
          aReading('w', 'raw', 5, { shares: [all, all] }),
        );
      },
    ],
    [
      'more left behind than there was',
      'episode.segments[1].recipe.lines[0].leftBehind: too-much',
      (f: typeof good) => {
        const leftBehind = { kind: 'mass', lowMg: 50_000, valueMg: 50_000, highMg: 50_000 };
        Object.assign(f.episode.segments[1]?.recipe?.lines[0] ?? {}, { leftBehind });
      },
    ],
    [
      'a talk with a recipe',
      'episode.segments[0].recipe: kind',
      (f: typeof good) => {
        Object.assign(f.episode.segments[0] ?? {}, { recipe: aRecipe('r2', []) });
      },
    ],
    [
      'an end before the start',
      'episode.segments[0].outFrame: order',
      (f: typeof good) => {
        Object.assign(f.episode.segments[0] ?? {}, { inFrame: 50, outFrame: 50 });
      },
    ],
    [
      'amounts out of order',
      'episode.segments[1].recipe.lines[1].quantity: order',
      (f: typeof good) => {
        const quantity = { low: { num: 3, den: 2 }, high: { num: 4, den: 3 } };
        f.episode.segments[1]?.recipe?.lines.push(aLine('two', 'oats', { quantity, unit: 'oz' }));
      },
    ],
    [
      'a link that cannot hold',
      'episode.links[0]: order',
      (f: typeof good) => {
        const ends = {
          fromStepId: 's',
          toStepId: 's',
          fromAnchor: 'end',
          toAnchor: 'start',
        } as const;
        f.episode.links.push({ id: 'l', ...ends, minLagS: 60, maxLagS: 30, reason: '' });
      },
    ],
    [
      'stock of a food that is not there',
      'stock[0].foodId: unknown-id',
      (f: typeof good) => {
        f.stock.push({
          id: 'lot',
          foodId: 'gone',
          place: '',
          openedOn: null,
          useBy: null,
          moves: [],
        });
      },
    ],
    [
      'what was said of a segment that is not there',
      'said[0].scope.segmentId: unknown-id',
      (f: typeof good) => {
        f.said.push(saidLine('gone', { kind: 'whole', segmentId: 'gone' }));
      },
    ],
    [
      'what was said twice of the same',
      'said[1].scope: duplicate',
      (f: typeof good) => {
        f.said.push(saidLine('one', { kind: 'day' }), saidLine('two', { kind: 'day' }));
      },
    ],
    [
      'what was said without a filming day',
      'said: no-day',
      (f: typeof good) => {
        f.day = null;
        f.said.push(saidLine('one', { kind: 'day' }));
      },
    ],
  ] as const)('finds %s', (_, fault, change) => {
    expect(faults(broken(change))).toContain(fault);
  });

  it('never throws, whatever it is given', () => {
    fc.assert(fc.property(fc.anything(), (data) => void parseEpisodeData(data)));
    fc.assert(fc.property(fc.string(), (text) => void parseEpisodeFile(text)));
    fc.assert(
      fc.property(fc.anything(), fc.constantFrom(...Object.keys(good)), (value, key) => {
        void parseEpisodeData({ ...good, [key]: value });
      }),
    );
  });
});
