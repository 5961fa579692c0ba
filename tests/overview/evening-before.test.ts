import { describe, expect, test } from 'vitest';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { eveningBefore } from '#lib/overview/evening-before';
import {
  cardWords,
  eveningClock,
  outfitWords,
  shortWords,
  tareWords,
  tieWords,
  tooEarlyWords,
  weighOutWords,
} from '#lib/overview/evening-words';
import { THAWING } from '#lib/safety/general-cautions';
import { planDay } from '#lib/shoot/plan-day';
import { eveningText } from '#lib/sheet/evening-text';
import { demoFile } from '../ui/page-support';

const demo = demoFile();
const plan = planDay(demo, { seed: 1 });

function evening(file: EpisodeFile) {
  const found = eveningBefore(file, plan);
  if (!found) throw new Error('the demo has a day');
  return found;
}

/** The demo with one of its dishes changed. */
function withDish(title: string, change: (dish: Segment) => Partial<Segment>): EpisodeFile {
  const segments = demo.episode.segments.map((segment) =>
    segment.title === title ? { ...segment, ...change(segment) } : segment,
  );
  return { ...demo, episode: { ...demo.episode, segments } };
}
const SKILLET = 'Barley skillet';
const kitchen = (change: Partial<EpisodeFile['kitchen']>): EpisodeFile => {
  return { ...demo, kitchen: { ...demo.kitchen, ...change } };
};

describe('what is weighed out', () => {
  const lines = (file: EpisodeFile) =>
    evening(file)
      .weighOut.filter(({ dish }) => dish === SKILLET)
      .map(weighOutWords);

  test('dry and pantry ingredients with their grams; nothing fresh, nothing without an amount', () => {
    expect(lines(demo)).toEqual([
      '150 g pearl barley',
      expect.stringMatching(/^1 tablespoon olive oil: 1[34](\.\d)? g$/),
      expect.stringMatching(/^1\/2 teaspoon black pepper: 1(\.\d)? g$/),
    ]);
  });

  test('one and a half batches need one and a half times as much, and say so', () => {
    const more = withDish(SKILLET, () => ({ batches: { num: 3, den: 2 } }));
    expect(lines(more)[0]).toBe('150 g pearl barley: 225 g');
  });

  test('a dish that was cooked on another day needs none', () => {
    const day = demo.day && {
      ...demo.day,
      segments: demo.day.segments.map((place) => ({ ...place, part: 'film' as const })),
    };
    const found = evening({ ...demo, day });
    expect(found.weighOut).toEqual([]);
    expect(found.short).toEqual({ items: [], unmatched: [] });
  });
});

describe('what the pantry is short of', () => {
  test('what is to be bought, with what is there; what is in stock is left out', () => {
    const said = evening(demo).short.items.map(shortWords);
    expect(said).toContain('Carrots, raw: 1 × Bag of carrots 500 g');
    expect(said.some((words) => words.includes('in stock'))).toBe(false);
    expect(said.find((words) => words.startsWith('Salt'))).toContain('amount open: Salt to taste');
  });

  test('an ingredient without a food is told', () => {
    const file = withDish(SKILLET, ({ recipe }) => ({
      recipe: recipe && {
        ...recipe,
        lines: recipe.lines.map((line, at) => (at === 0 ? { ...line, foodId: null } : line)),
      },
    }));
    expect(evening(file).short.unmatched).toEqual([`150 g pearl barley (${SKILLET})`]);
  });
});

describe('room on the cards', () => {
  test('seconds on camera times Mbit/s over eight', () => {
    const seconds = demo.episode.segments
      .flatMap(({ steps }) => steps.filter(({ onCamera }) => onCamera))
      .reduce((sum, { usualS }) => sum + usualS, 0);
    const { cards } = evening(kitchen({ videoMbps: 100 }));
    // 100 Mbit/s are 12.5 MB/s (SI: 8 bits a byte, decimal prefixes).
    expect(cards).toEqual({ seconds, bytes: seconds * 12_500_000 });
    expect(cardWords({ seconds: 3600, bytes: 45e9 }, 100)).toContain(
      '1 h on camera at 100 Mbit/s, 45.0 GB free',
    );
    expect(cardWords({ seconds: 3601, bytes: 45.01e9 }, 100)).toContain('45.1 GB');
  });

  test('nobody knows the room where nobody said what the camera writes', () => {
    const { cards } = evening(demo);
    expect(cards.bytes).toBeNull();
    expect(cardWords(cards, null)).toMatch(/^Cards: .* on camera\. Say in the kitchen/);
    expect(cardWords({ seconds: 0, bytes: 0 }, 100)).toContain('no step is marked as on camera');
  });
});

describe('pans, outfit and cautions', () => {
  test('pans that were weighed empty stand with their grams', () => {
    expect(tareWords([])).toEqual([expect.stringContaining('Weigh your pans')]);
    const file = withDish(SKILLET, ({ recipe }) => ({
      recipe: recipe && {
        ...recipe,
        weighings: recipe.weighings.slice(0, 1).map((reading) => {
          return { ...reading, kind: 'container', grossMg: 812_000, tareMg: 0, shares: [] };
        }),
      },
    }));
    expect(tareWords(evening(file).tares)).toEqual([`${SKILLET}: weighed empty, 812 g`]);
  });

  test('what is worn, or that nobody said', () => {
    expect(outfitWords('')).toBe('Outfit: not said yet');
    expect(outfitWords('blue apron')).toBe('Outfit: blue apron');
  });

  test('thawing is told where something may be frozen, with its source', () => {
    expect(evening(demo).cautions).toContainEqual(THAWING);
    // FDA Food Code 3-501.13: 41 °F in the refrigerator, running water of 70 °F, 4 h.
    expect(THAWING.text).toMatch(/5 °C \(41 °F\).*21 °C \(70 °F\).*4 h/);
    expect(THAWING.source).toEqual({ title: 'FDA Food Code', section: '3-501.13' });
    const dry = { ...demo, episode: { ...demo.episode, segments: [] } };
    expect(evening(dry).cautions).toEqual([]);
  });
});

describe('clock times and ties in words', () => {
  test('the evening’s own times are bare, others say when', () => {
    expect(eveningClock(-125, '2026-12-11')).toBe('21:55');
    expect(eveningClock(390, '2026-12-11')).toBe('06:30 on the day');
    // 2026-12-11 is a Friday.
    expect(eveningClock(-1560, '2026-12-11')).toBe('22:00, Thu 10 Dec');
  });

  test('what waits, how long, and why', () => {
    const tie = { stepId: 's', title: 'Bake', atMin: 600, leastMin: 0, mostMin: null, reason: '' };
    expect(tieWords(tie)).toBe('before Bake at 10:00');
    const long = { ...tie, leastMin: 480, mostMin: 720, reason: 'must swell' };
    expect(tieWords(long)).toBe('at least 8 h and at most 12 h before Bake at 10:00: must swell');
  });

  test('a step that is begun too early says when it may be', () => {
    const file = withDish(SKILLET, ({ steps }) => ({
      steps: steps.map((step, at) => (at === 0 ? { ...step, evening: true } : step)),
    }));
    const [first] = evening(file).steps;
    if (!first) throw new Error('one step is ticked');
    expect(tooEarlyWords(first, '2026-12-11')).toBeNull();
    const early = { ...first, tooEarly: true, notBeforeMin: 390 };
    expect(tooEarlyWords(early, '2026-12-11')).toContain('not before 06:30 on the day');
  });
});

test('the text has the steps first, a box before each line, and no line over 80', () => {
  const file = withDish(SKILLET, ({ steps }) => ({
    steps: steps.map((step, at) => (at === 0 ? { ...step, evening: true } : step)),
  }));
  const text = eveningText(file, plan) ?? '';
  expect(text.indexOf('BEGIN BY')).toBeGreaterThan(0);
  expect(text.indexOf('BEGIN BY')).toBeLessThan(text.indexOf('WEIGH OUT'));
  expect(text).toMatch(/\[ \] \d\d:\d\d {1,2}Weigh and chop for the skillet/);
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(eveningText({ ...demo, day: null }, plan)).toBeNull();
});
