import Fraction from 'fraction.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountContext } from '#lib/episode/context';
import { cookWeights } from '#lib/episode/cook-weights';
import { gramsByLine, sharesOf } from '#lib/episode/reading-shares';
import { lastContainerMg, lastScaleId, onScale, waitingReading } from '#lib/episode/scale-so-far';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';

const whole = { num: 1, den: 1 };
const of = (lineId: string) => [{ lineId, share: whole }];

describe('the shares of one reading', () => {
  it('are in the proportion of the parts, in lowest terms', () => {
    expect(
      sharesOf([
        { lineId: 'oil', parts: 20_000 },
        { lineId: 'sauce', parts: 60_000 },
      ]),
    ).toEqual([
      { lineId: 'oil', share: { num: 1, den: 4 } },
      { lineId: 'sauce', share: { num: 3, den: 4 } },
    ]);
  });

  it('make all of it, exactly, however many and however large the parts', () => {
    const parts = fc.array(fc.integer({ min: 1, max: 1_000_000_000 }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(parts, (given) => {
        const shares = sharesOf(given.map((each, at) => ({ lineId: String(at), parts: each })));
        const sum = shares.reduce(
          (all, { share }) => all.add(new Fraction(share.num, share.den)),
          new Fraction(0),
        );
        expect(sum.toFraction()).toBe('1');
        const total = given.reduce((all, each) => all + each, 0);
        shares.forEach(({ share }, at) => {
          expect(share.den).toBeLessThanOrEqual(1_000_000_000);
          expect(Math.abs(share.num / share.den - (given[at] ?? 0) / total)).toBeLessThan(1e-7);
        });
      }),
    );
  });

  it('are proposed by what was weighed, else by what is planned; not for what has no grams', () => {
    const lines = [grams('oil', 'f', 20), aLine('salt', 'f'), grams('sauce', 'f', 50)];
    const weighings = [aReading('w', 'raw', 60, { shares: of('sauce') })];
    const recipe = aRecipe('r', lines, { weighings });
    const context = amountContext(aFile([aDish('d', recipe)], [aFood('f', {})]));
    expect([...gramsByLine(recipe, context)]).toEqual([
      ['oil', 20_000],
      ['sauce', 60_000],
    ]);
  });
});

describe('what stands on the scale', () => {
  const at = (minute: number) => `2026-12-10T10:${String(minute).padStart(2, '0')}:00.000Z`;

  it('is the last straight reading of an ingredient', () => {
    const oats = aReading('w1', 'raw', 252, { at: at(1), tareMg: 200_000, shares: of('a') });
    const done = aReading('w2', 'finished', 900, { at: at(2) });
    expect(onScale({ weighings: [oats, done] })?.id).toBe('w1');
    const jar = aReading('w3', 'raw', 300, { at: at(3), method: 'difference', shares: of('b') });
    expect(onScale({ weighings: [oats, jar] })).toBeNull();
    expect(onScale({ weighings: [] })).toBeNull();
  });

  it('waits for its second reading where it is a container’s', () => {
    const jar = aReading('w1', 'container', 410, { at: at(1), shares: of('a') });
    const tray = aReading('w2', 'container', 905, { at: at(2) });
    expect(waitingReading({ weighings: [jar, tray] }, 'a')?.id).toBe('w1');
    expect(waitingReading({ weighings: [jar, tray] }, 'b')).toBeNull();
    expect(waitingReading({ weighings: [jar, tray] }, null)?.id).toBe('w2');
  });

  it('offers the container and the scale used last; what was on the scale is no container', () => {
    const oats = aReading('w1', 'raw', 252, { at: at(1), tareMg: 200_000, shares: of('a') });
    const nuts = aReading('w2', 'raw', 300, {
      at: at(2),
      tareMg: 252_000,
      afterId: 'w1',
      scaleId: 'fine',
      shares: of('b'),
    });
    expect(lastContainerMg({ weighings: [oats, nuts] })).toBe(200_000);
    expect(lastScaleId({ weighings: [oats, nuts] })).toBe('fine');
    expect(lastContainerMg({ weighings: [] })).toBeNull();
  });
});

describe('raw and cooked weights of one cook', () => {
  const weigh = (line: ReturnType<typeof aLine>, weighings: ReturnType<typeof aReading>[]) => {
    const recipe = aRecipe('r', [line], { weighings });
    return cookWeights(
      line,
      weighings,
      amountContext(aFile([aDish('d', recipe)], [aFood('f', {})])),
    );
  };
  const raw = aReading('w1', 'raw', 500, { shares: of('l') });
  const cooked = aReading('w2', 'cooked', 360, { shares: of('l') });

  it('are known where both were read: half a step of a 1 g scale each', () => {
    expect(weigh(aLine('l', 'f', { state: 'raw' }), [raw, cooked])).toEqual({
      rawMg: 500_000,
      cookedMg: 360_000,
      halfMg: 500,
      percent: 72,
    });
    const jar = aReading('w1', 'raw', 600, {
      tareMg: 100_000,
      method: 'difference',
      shares: of('l'),
    });
    expect(weigh(aLine('l', 'f', { state: 'raw' }), [jar, cooked])?.halfMg).toBe(1000);
  });

  it('takes planned grams where the raw one was not read', () => {
    const line = grams('l', 'f', 450, { state: 'raw' });
    expect(weigh(line, [cooked])).toMatchObject({ rawMg: 450_000, percent: 80 });
  });

  it('are no yield with peel on, of an amount of the cooked food, or with one of them missing', () => {
    expect(weigh(aLine('l', 'f', { state: 'raw', asBought: true }), [raw, cooked])).toBeNull();
    expect(weigh(aLine('l', 'f', { state: 'cooked' }), [raw, cooked])).toBeNull();
    expect(weigh(aLine('l', 'f', { state: 'raw' }), [raw])).toBeNull();
    expect(weigh(aLine('l', 'f', { state: 'raw' }), [cooked])).toBeNull();
  });
});
