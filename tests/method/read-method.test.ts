import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { milliCOf } from '#lib/method/gas-mark';
import { readMethod, type MethodStep, type ReadMethod } from '#lib/method/read-method';
import { LONGEST_METHOD, MOST_SENTENCES, sentencesOf } from '#lib/method/text';
import { stepTime } from '#lib/method/usual-minutes';

function read(text: string, region: 'US' | 'EU' = 'EU'): ReadMethod {
  const method = readMethod(text, region);
  if (!method.ok) throw new Error(JSON.stringify(method.problems));
  return method.value;
}

const LOAF = `Method:
1. Preheat the oven to 200°C/180°C fan/gas 6 and oil a tray.
2. Mix the mince, oats and egg for 5 minutes.
• Bake for 25–30 min. until the middle reads 74 °C. Rest for 10 minutes, then slice.`;

describe('a whole method', () => {
  test('gives steps in its order, with titles from its own words', () => {
    const { steps } = read(LOAF);
    expect(steps.map(({ title, role }) => [title, role])).toEqual([
      ['Mix the mince, oats and egg', 'prep'],
      ['Bake', 'cook'],
      ['Rest', 'wait'],
    ]);
  });

  test('a bake keeps the degrees that the oven was heated to, and the heating is no step', () => {
    const { steps, ovenHeatings, text } = read(LOAF);
    expect(ovenHeatings).toHaveLength(1);
    const bake = steps[1];
    expect(bake?.oven).toMatchObject({ milliC: 200_000, earlier: true });
    expect(text.slice(bake?.oven?.from?.start, bake?.oven?.from?.end)).toBe(
      '200°C/180°C fan/gas 6',
    );
    expect(bake).toMatchObject({
      insideMilliC: 74_000,
      time: { lowS: 1500, usualS: 1650, highS: 1800 },
    });
  });

  test('of several figures the region’s own is taken, without a fan where one is said', () => {
    const text = 'Bake at 160°C fan, 350°F or 180°C for 10 minutes.';
    expect(read(text, 'EU').steps[0]?.oven).toMatchObject({ milliC: 180_000 });
    // 350 °F are 176.667 °C: (350 − 32) × 5/9.
    expect(read(text, 'US').steps[0]?.oven).toMatchObject({ milliC: 176_667 });
    const fan = read('Bake at 160°C fan for 10 minutes.').steps[0]?.oven;
    expect(fan).toMatchObject({ milliC: 160_000, setting: { fan: true } });
  });

  test('markup, bullets and signs that nobody sees are left out', () => {
    const { steps } = read(
      '<ol><li>Bake at 180&deg;C for&nbsp;20\u200b minutes.</li><li>Rest for 5 min.</li></ol>',
    );
    expect(steps.map(({ time }) => time.usualS)).toEqual([1200, 300]);
  });
});

describe('a text that cannot be read', () => {
  const code = (text: string) => {
    const method = readMethod(text, 'EU');
    return method.ok
      ? 'ok'
      : method.problems.map((problem) => `${problem.path} ${problem.code}`).join();
  };

  test.each([
    ['', 'method empty'],
    [' \n\t\u200b', 'method empty'],
    ['···!?', 'method empty'],
    ['The batter will look thin.', 'method none'],
    ['x'.repeat(LONGEST_METHOD + 1), 'method too-long'],
    ['Bake. '.repeat(MOST_SENTENCES + 1), 'method too-many'],
    ['Bake for 20 minutes, fry for 5 minutes. '.repeat(101), 'method too-many'],
  ])('%#', (text, expected) => {
    expect(code(text)).toBe(expected);
  });

  test('the limit and by how much it was passed are said', () => {
    const method = readMethod('x'.repeat(LONGEST_METHOD + 7), 'EU');
    expect(method.ok ? '' : method.problems[0]?.message).toContain(
      '20000 characters is read: this is 7 too many',
    );
  });

  test('times and temperatures beyond what a plan holds are kept within it', () => {
    const [long, hot, cold] = read(
      'Cure for 400 days. Bake at 5000 °C for 1 minute. Freeze at -18 °C for 2 hours.',
    ).steps;
    expect(long?.time.highS).toBe(7 * 86_400);
    expect(hot?.oven).toBeNull();
    expect(cold?.read.degrees).toEqual([]);
  });

  const words = [
    'bake',
    'for',
    '20',
    'minutes',
    '180',
    '°',
    'C',
    '/',
    'gas',
    'overnight',
    'and',
    'then',
    'oven',
    '½',
    '-',
    'until',
    '(',
    '\n',
    '.',
    'or',
    'half',
    'an',
    'hour',
    'fan',
    'h30',
    'to',
    'leave',
    ',',
    '1/0',
    '9e99',
    '\u202e',
  ];
  test('any words are answered', () => {
    const mixed = fc.array(fc.constantFrom(...words), { maxLength: 80 });
    fc.assert(
      fc.property(mixed, (parts) => {
        const method = readMethod(parts.join(' '), 'US');
        if (method.ok) for (const step of method.value.steps) expectFits(step, method.value.text);
      }),
    );
  });

  test('any text is answered', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 400, unit: 'grapheme' }), (text) => {
        expect(typeof readMethod(text, 'EU').ok).toBe('boolean');
      }),
    );
  });
});

/** A step that the plan can hold. */
function expectFits({ time, title, sentence, insideMilliC, oven }: MethodStep, text: string): void {
  const { lowS, usualS, highS } = time;
  expect(lowS).toBeLessThanOrEqual(usualS);
  expect(usualS).toBeLessThanOrEqual(highS);
  expect([lowS, usualS, highS].every(Number.isInteger)).toBe(true);
  expect(title).not.toBe('');
  expect(title.length).toBeLessThanOrEqual(200);
  expect(title).not.toContain('\n');
  expect(text.slice(sentence.start, sentence.end)).not.toBe('');
  expect(insideMilliC === null || Number.isInteger(insideMilliC)).toBe(true);
  expect(oven === null || Number.isInteger(oven.milliC)).toBe(true);
}

test('sentences end at a full stop, not within a number or a short form', () => {
  const text = '1. Bake 2.5 hours. 2) Cool for 20 min. on a rack. Add 1 tbsp. oil!';
  expect(sentencesOf(text).map(({ start, end }) => text.slice(start, end))).toEqual([
    'Bake 2.5 hours.',
    '2) Cool for 20 min. on a rack.',
    'Add 1 tbsp. oil!',
  ]);
});

test('an open end stands for the other, and a step without minutes for a guess', () => {
  expect(stepTime({ minutes: { low: 240, high: null }, kind: 'chill' })).toEqual({
    lowS: 14_400,
    usualS: 14_400,
    highS: 14_400,
  });
  expect(stepTime({ minutes: null, kind: 'prep' })).toEqual({ lowS: 180, usualS: 300, highS: 600 });
});

// British recipes print gas 4 beside 180 °C and 350 °F: from memory.
test.each([
  [{ value: 4, unit: 'gas' as const }, 180_000],
  [{ value: 0.5, unit: 'gas' as const }, 120_000],
  [{ value: 11, unit: 'gas' as const }, null],
  [{ value: 350, unit: 'F' as const }, 176_667],
])('a setting in thousandths of a degree %#', (setting, milliC) => {
  expect(milliCOf(setting)).toBe(milliC);
});
