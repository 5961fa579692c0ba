import { describe, expect, test } from 'vitest';
import { LONGEST_KEPT_METHOD } from '#lib/episode/step-limits';
import { checkedMethod, keptMethod } from '#lib/method/kept-method';

const BEANS = 'Mash the beans with the lime.\nFry the mash for 4 minutes.';

const kept = (standing: string, pasted: string, follows: boolean) => {
  const done = keptMethod(standing, pasted, follows);
  return done.ok ? done.value : done.problems;
};

// What a dish keeps of a pasted text: the project's own rule, no source.
describe('the text of a method that a dish keeps', () => {
  test('the first one is kept as it was pasted, without blanks around it', () => {
    expect(kept('', `\n${BEANS}\n\n`, false)).toBe(BEANS);
    expect(kept('', BEANS, true)).toBe(BEANS);
  });

  test('another text of a dish with steps comes after the one that stands', () => {
    const crumbs = 'Toast the crumbs for 3 minutes.';
    expect(kept(BEANS, crumbs, true)).toBe(`${BEANS}\n\n${crumbs}`);
  });

  test('a text that shares a line with it is that text as it was put right', () => {
    const better = 'Mash  the beans with the lime.\nFry the mash for 6 minutes.';
    expect(kept(BEANS, better, true)).toBe(better);
    expect(kept(BEANS, BEANS, true)).toBe(BEANS);
  });

  test('without steps of the dish the text in the form is the whole method', () => {
    expect(kept(BEANS, 'Toast the crumbs.', false)).toBe('Toast the crumbs.');
  });

  test('what is too long for a dish is refused at the text, with how much it is', () => {
    const long = 'y'.repeat(LONGEST_KEPT_METHOD);
    expect(checkedMethod(` ${long}\n`)).toEqual({ ok: true, value: long });
    expect(checkedMethod(`${long}yy`)).toMatchObject({
      ok: false,
      problems: [
        {
          path: 'method',
          code: 'too-long',
          message: expect.stringContaining('2 too many') as string,
        },
      ],
    });
    expect(kept(BEANS, long, true)).toMatchObject([{ code: 'too-long' }]);
  });
});
