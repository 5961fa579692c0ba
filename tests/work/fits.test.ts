import { expect, it } from 'vitest';
import { proposedFit, wishOf } from '#lib/swap/fit-wish';
import { fitSteps } from '#lib/swap/recipe-fit';
import { fitBeside } from '#lib/work/fits';
import { kitchen } from '../swap/kitchen';
import { grams } from '../support/build';

const file = kitchen([grams('curd', 'lean', 200), grams('oats', 'oats', 80)]);
file.episode.segments[0]?.recipe?.weighings.splice(0);
const asked = {
  ...proposedFit(file, 'bowl'),
  limits: [{ nutrient: 'protein' as const, relation: 'atLeast' as const, amount: 39 }],
};

it('a thread beside the server finds the same amounts, one question after the other', async () => {
  const wish = wishOf(file, 'bowl', asked, 5);
  const none = wishOf(file, 'bowl', { ...asked, limits: [] }, 5);
  const [found, refused] = await Promise.all([
    fitBeside({ file, wish }),
    fitBeside({ file, wish: none }),
  ]);
  expect(found).toEqual(await fitSteps(file, wish));
  // 30.16 g are there: 90.2 g of curd more, at 9.8 g of protein in 100 g.
  expect(found).toMatchObject({ ok: true, value: { steps: [{ massMg: 295_000 }] } });
  expect(refused).toMatchObject({ ok: false, problems: [{ code: 'no-targets' }] });
}, 30_000);
