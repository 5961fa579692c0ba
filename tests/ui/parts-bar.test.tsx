import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { publishedNumbers, type NumberScope } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { PartsBar } from '../../app/_ui/parts-bar';
import { Picture } from '../../app/episodes/[id]/_components/picture';
import { BARS } from '../../app/look/_components/figure-samples';
import { demoFile, words } from './page-support';

vi.mock('next/navigation', () => ({ usePathname: () => '/' }));

const [known, targeted, atLeast, open] = BARS;
const bar = (which: typeof known) =>
  which ? renderToStaticMarkup(<PartsBar bar={which}>the number</PartsBar>) : '';

describe('a bar of parts', () => {
  test('names each part with its share beside the drawing, which is silent', () => {
    const markup = bar(known);
    expect(markup).toMatch(/<svg[^>]*aria-hidden="true"/);
    // 78 of 112 by hand.
    expect(words(markup)).toContain('70 % 500 g ground turkey');
    expect(markup.match(/<li/g)).toHaveLength(known?.parts.length ?? 0);
  });

  test('says each target with its verdict in words', () => {
    expect(words(bar(targeted))).toMatch(/target at most 860 kcal : cannot tell/);
    expect(words(bar(targeted))).toMatch(/target at least 700 kcal : met/);
  });

  test('says that there is more, and what is missing', () => {
    expect(words(bar(atLeast))).toMatch(/and more : no value for smoked paprika/);
  });

  test('of an open number has no part and no share', () => {
    expect(words(bar(open))).toBe('the number open : no grams for salt to taste');
    expect(bar(open)).not.toContain('%');
  });
});

describe('the picture of the demo', () => {
  const demo = demoFile();
  const picture = (scope: NumberScope, file: EpisodeFile = demo) => {
    const figures = episodeFigures(file);
    const numbers = publishedNumbers(file, figures);
    return renderToStaticMarkup(<Picture view={{ file, figures, numbers }} scope={scope} />);
  };

  test('of the day gives each dish the number that is published, and they add up to the day', () => {
    const bars = picture({ kind: 'day' }).match(/<figure.*?<\/figure>/gs) ?? [];
    expect(bars).toHaveLength(HEADLINE_NUTRIENTS.length);
    for (const markup of bars) {
      const [caption = '', body = ''] = markup.split('</figcaption>');
      const day = Number(/(\d+) (?:kcal|g)/.exec(words(caption))?.[1]);
      const dishes = [...body.matchAll(/<li.*?<\/li>/gs)]
        .map(([item]) => words(item))
        .filter((text) => !text.startsWith('target'))
        .map((text) => Number(/^(\d+) (?:kcal|g)/.exec(text)?.[1]));
      expect(dishes.length).toBeGreaterThan(1);
      expect(dishes.reduce((sum, each) => sum + each, 0)).toBe(day);
    }
  });

  test('of the day stands against the targets of the day', () => {
    const text = words(picture({ kind: 'day' }));
    for (const { amount, segmentId } of demo.episode.targets) {
      if (segmentId === null) expect(text).toMatch(new RegExp(`target at (least|most) ${amount} `));
    }
  });

  test('of a dish has a bar for each headline nutrient, whose shares are a whole', () => {
    const bars = picture({ kind: 'whole', segmentId: 'seg-loaf' }).match(/<figure.*?<\/figure>/gs);
    expect(bars).toHaveLength(HEADLINE_NUTRIENTS.length);
    for (const markup of bars ?? []) {
      const shares = [...markup.matchAll(/<b>(\d+) %<\/b>/g)].map(([, share]) => Number(share));
      const sum = shares.reduce((all, each) => all + each, 0);
      // Six whole numbers, each off by half at most.
      expect(Math.abs(sum - 100)).toBeLessThanOrEqual(3);
    }
  });

  test('of a dish in which nothing is known is left out', () => {
    const bare = structuredClone(demo);
    for (const { recipe } of bare.episode.segments) {
      for (const line of recipe?.lines ?? []) line.foodId = null;
    }
    expect(picture({ kind: 'whole', segmentId: 'seg-loaf' }, bare)).toBe('');
  });
});
