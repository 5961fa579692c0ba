import { describe, expect, test } from 'vitest';
import type { Allowance } from '#lib/figures/allowance';
import { allowanceWords } from '#lib/figures/allowance-words';

const some: Allowance = { side: 'atMost', bound: 240, labels: ['skyr'], otherLabels: [] };

describe('the allowance in words', () => {
  // 21 CFR 101.9(g)(5) and (g)(4)(ii), from memory; 120 % of 200 kcal and 80 % of 10 g by hand.
  test('says the side that the law limits, that the other has none, and the law', () => {
    expect(allowanceWords(some, 'energyKcal')).toEqual([
      'With every label at the end of what the law allows it could be as much as 240.0 kcal; downwards there is no limit in law.',
      'The labels in it: skyr.',
      'A label may lawfully stand for up to 120 % of what it declares: 21 CFR 101.9(g)(5).',
    ]);
    const protein = allowanceWords({ ...some, side: 'atLeast', bound: 8 }, 'protein');
    expect(protein[0]).toMatch(/as little as 8\.0 g; upwards there is no limit in law\.$/);
    expect(protein[2]).toMatch(/80 % of what it declares: 21 CFR 101\.9\(g\)\(4\)\(ii\)\.$/);
  });

  test('rounds the bound away from the number, so that it stays true', () => {
    expect(allowanceWords({ ...some, bound: 240.01 }, 'energyKcal')[0]).toContain('240.1 kcal');
    const low = allowanceWords({ ...some, side: 'atLeast', bound: 7.99 }, 'protein')[0];
    expect(low).toContain('7.9 g');
  });

  test('gives no bound where the law gives none, and says why', () => {
    const mixed = allowanceWords({ ...some, side: null, bound: null }, 'energyKcal');
    expect(mixed[0]).toMatch(/different sides or not at all/);
    const lacking = allowanceWords({ ...some, bound: null }, 'energyKcal');
    expect(lacking[0]).toMatch(/^Something is missing/);
    expect(allowanceWords(null, 'fat')).toEqual([
      'No package label by US rules is in this number: 21 CFR 101.9(g) adds nothing to its range.',
    ]);
    for (const text of [...mixed, ...lacking]) expect(text).not.toMatch(/\d+\.?\d* kcal/);
  });

  test('names labels of another rule, which the law does not speak of', () => {
    expect(allowanceWords({ ...some, otherLabels: ['crispbread'] }, 'fat')).toContainEqual(
      'Counted as printed, since this law does not speak of them: crispbread.',
    );
  });
});
