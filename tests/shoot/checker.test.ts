import { describe, expect, test } from 'vitest';
import type { ShootPlan } from '#lib/shoot/plan';
import { checkPlan } from './checker';
import { FAULTY, SOUND } from './checker-cases';
import { randomDay, randomDayWithWitness } from './random-day';
import { smallPlan } from './small-day';

const NOTHING_BROKEN = {
  broken: [],
  clash: [],
  proof: { status: 'rules', levels: [], clash: [] },
} as const;

describe('the checker of a shooting order', () => {
  test.each(SOUND)('finds nothing: %s', (_, file, plan) => {
    expect(checkPlan(file, plan)).toEqual([]);
  });

  test.each(FAULTY)('finds exactly the fault: %s', (_, file, plan, words) => {
    expect(checkPlan(file, plan)).toEqual(words.map((w) => expect.stringMatching(w) as unknown));
  });

  test('reads a shooting order and an episode file as they are', () => {
    const read = (plan: ShootPlan): string[] => checkPlan(randomDay(1), plan);
    expect(read({ ...smallPlan, ...NOTHING_BROKEN })).not.toEqual([]);
  });

  test('tells when any entry of a sound order is lost', () => {
    for (let seed = 0; seed < 60; seed += 1) {
      const { file, witness } = randomDayWithWitness(seed);
      for (const gone of witness.entries) {
        const entries = witness.entries.filter((e) => e !== gone);
        expect(checkPlan(file, { ...witness, entries }), gone.id).not.toEqual([]);
      }
    }
  });
});
