import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { dishesOf } from '#lib/episode/context';
import { parseEpisodeFile } from '#lib/episode/file';
import type { EpisodeFile } from '#lib/episode/schema';
import { episodeFigures } from '#lib/figures/episode-figures';
import { takeLock } from '#lib/lock/numbers-lock';
import { changedFoods, restsOn } from '#lib/publish/correction/changed-foods';
import {
  correctionNeeded,
  numberWords,
  type CorrectedNumber,
} from '#lib/publish/correction/correction-of';
import {
  correctionFoot,
  correctionReply,
  LONGEST_REASON,
  proposedReason,
} from '#lib/publish/correction/correction-words';
import { recordedCorrection } from '#lib/publish/correction/recorded-correction';
import { description } from '#lib/publish/description';
import { DEFAULT_LAYOUT } from '#lib/publish/description/layout';

const url = new URL('../../../seed/demo.episode.json', import.meta.url);
const parsed = parseEpisodeFile(readFileSync(url, 'utf8'));
if (!parsed.ok) throw new Error('the demo must be readable');
const { edit: _, ...file } = parsed.value;
const { snapshot } = takeLock(file);

function changed(change: (copy: EpisodeFile) => void, of: EpisodeFile = file): EpisodeFile {
  const copy = structuredClone(of);
  change(copy);
  return copy;
}

function dish(of: EpisodeFile, at = 0) {
  const found = dishesOf(of.episode.segments)[at];
  if (!found) throw new Error('the demo has that dish');
  return found;
}

/** Another weight of the first dish's first ingredient, typed instead of weighed. */
const heavier = (valueMg: number, of?: EpisodeFile) =>
  changed((copy) => {
    const { recipe } = dish(copy);
    const [line] = recipe.lines;
    if (!line) throw new Error('the dish has ingredients');
    line.planned = { lowMg: valueMg, valueMg, highMg: valueMg };
    recipe.weighings = recipe.weighings.filter(
      ({ shares }) => !shares.some(({ lineId }) => lineId === line.id),
    );
  }, of);

const needed = (now: EpisodeFile, lock = snapshot) =>
  correctionNeeded(lock, { file: now, figures: episodeFigures(now) });

describe('what there is to correct', () => {
  it('is nothing while the lock holds, and nothing where only words changed', () => {
    expect(needed(file).kind).toBe('none');
    expect(needed(changed((copy) => void (copy.episode.hook = 'Other words'))).kind).toBe('none');
  });

  it('is what the two descriptions write otherwise: each old number stands in the old one, each new in the new', () => {
    const now = heavier(400_000);
    const { kind, numbers, sums } = needed(now);
    expect(kind).toBe('numbers');
    expect(numbers.length).toBeGreaterThan(4);
    const [before, after] = [description(file).text, description(now).text];
    for (const number of numbers) {
      expect(before).toContain(numberWords(number, number.from.text));
      expect(after).toContain(numberWords(number, number.to?.text ?? ''));
      expect(number.from.range).not.toBe('');
    }
    // Lines of numbers that differ between the two are all told, or only give way to the sum, and no other.
    const lines = (text: string) => text.split('\n').filter((line) => / kcal · /.test(line));
    const other = lines(after).filter((line) => !before.includes(line));
    const parts = new Set([...numbers, ...sums].map(({ dish: of, part }) => `${of ?? ''} ${part}`));
    expect(parts.size).toBe(other.length);
  });

  it('is no number of a dish that nobody touched, which only gives way so that the day adds up', () => {
    const given = [350, 375, 400, 425, 450, 475].map((grams) => needed(heavier(grams * 1000)));
    const gives = given.find(({ sums }) => sums.length > 0);
    if (!gives) throw new Error('of so many weights one makes another dish give way');
    expect(gives.sums.every(({ dish: of }) => of !== dish(file).title)).toBe(true);
    expect(gives.sums.every(({ from, to }) => from?.text !== to?.text)).toBe(true);
    expect(new Set(gives.numbers.map(({ dish: of }) => of))).toEqual(
      new Set([dish(file).title, null]),
    );
    const foot = correctionFoot(gives.numbers, { reason: '', on: '2026-11-30' });
    for (const { dish: of } of gives.sums) expect(foot).not.toContain(of);
    // Another step of rounding is the person's own doing, though no amount has moved.
    const coarse = needed(changed((copy) => void (copy.episode.energyStep = 10)));
    expect(coarse.numbers.length).toBeGreaterThan(0);
    expect(coarse.sums).toEqual([]);
  });

  it('is what 100 g come to, live and between two locks, which keep no layout', () => {
    const now = changed((copy) => {
      const finished = dish(copy, 1).recipe.weighings.find(({ kind }) => kind === 'finished');
      if (finished) finished.grossMg -= 300_000;
    });
    const per100g = ({ numbers }: { readonly numbers: readonly CorrectedNumber[] }) =>
      numbers.filter(({ scope }) => scope.kind === 'per100g');
    const live = per100g(needed(now));
    expect(live.map(({ nutrient }) => nutrient)).toContain('energyKcal');
    const said = { reason: 'Weighed again.', on: '2026-11-30' };
    expect(per100g(recordedCorrection(said, snapshot, takeLock(now).snapshot))).toEqual(live);
    const narrow = { ...DEFAULT_LAYOUT, dish: ['whole' as const] };
    const hidden = changed((copy) => void (copy.creator.layout = narrow), now);
    expect(per100g(needed(hidden))).toEqual(live);
  });

  it('is no correction where only a range moves', () => {
    const now = changed((copy) => {
      for (const scale of copy.kitchen.scales) scale.accuracyPpm += 300;
    });
    const { kind, numbers, ranges, inputs } = needed(now);
    expect({ kind, numbers }).toEqual({ kind: 'rangesOnly', numbers: [] });
    expect(ranges.length).toBeGreaterThan(0);
    expect(inputs.some(({ what }) => what.includes('accuracy'))).toBe(true);
  });

  it('is no number of a dish that is new since, and says of one that is gone that its numbers no longer hold', () => {
    const without = changed((copy) => {
      copy.episode.segments = copy.episode.segments.filter(({ id }) => id !== dish(copy).id);
      copy.episode.targets = [];
      copy.episode.links = [];
      copy.day = null;
      copy.said = [];
    });
    const gone = needed(without).numbers.filter(({ to }) => to === null);
    expect(gone.map(({ dish: of }) => of)).toContain(dish(file).title);
    expect(correctionFoot(gone, { reason: '', on: '2026-11-30' })).toContain('no longer holds');
    const added = needed(file, takeLock(without).snapshot);
    expect(added.numbers.some(({ dish: of }) => of === dish(file).title)).toBe(false);
  });

  it('is what was said on camera, where the ingredients no longer allow it, though the text keeps to it', () => {
    const scope = { kind: 'whole', segmentId: dish(file).id } as const;
    const whole = episodeFigures(file).dishes[0]?.whole.energyKcal;
    const amount = Math.round(whole?.value ?? 0);
    const numbers = [
      { nutrient: 'energyKcal', amount, hedge: 'exact', value: whole?.value ?? 0 } as const,
    ];
    const said = { id: 'said-1', at: '2026-12-12T10:00:00Z', scope, text: 'All of it.', numbers };
    const spoken = changed((copy) => void copy.said.push(said));
    const now = heavier(600_000, spoken);
    const told = needed(now, takeLock(spoken).snapshot).numbers.find(
      ({ nutrient, scope: of }) => nutrient === 'energyKcal' && of.kind === 'whole',
    );
    expect(told?.spoken).toBe(true);
    expect(told?.from.text).toBe(String(amount));
    expect(Number(told?.to?.text)).toBeGreaterThan(amount);
    const foot = correctionFoot(told ? [told] : [], { reason: 'Weighed again', on: '2026-11-30' });
    expect(foot).toContain(`The video still says ${String(amount)} kcal.`);
  });

  it('says of a lock that cannot be read that nobody can say', () => {
    expect(correctionNeeded('{', { file, figures: episodeFigures(file) }).kind).toBe('unread');
  });
});

describe('a correction in words', () => {
  const now = heavier(400_000);
  const { numbers, inputs, otherEngine } = needed(now);

  it('has the date, new and old number of each amount, and the reason as a sentence', () => {
    const foot = correctionFoot(numbers, { reason: 'It was weighed again', on: '2026-11-30' });
    const [first, ...others] = foot.split('\n');
    expect(first).toBe('Correction, 30 Nov 2026: It was weighed again.');
    // One line for each dish, its portions before all of it.
    const dishes = new Set(numbers.map(({ dish: of }) => of));
    expect(others).toHaveLength(dishes.size);
    const own = others.find((line) => line.startsWith('- Barley skillet, '));
    expect(own).toMatch(/, the whole dish: |; the whole dish: \d+ kcal \(not \d+\), /);
    const portion = numbers.find(({ scope }) => scope.kind === 'portion')?.part ?? '';
    expect(own).toMatch(new RegExp(`^- Barley skillet, ${portion}: \\d+ kcal \\(not \\d+\\)`));
    const reply = correctionReply(numbers, { reason: 'Why?', on: '2026-11-30' });
    expect(reply.split('\n')[0]).toBe('I have put numbers right on 30 Nov 2026. Why?');
    expect(reply).toMatch(/\nThe description has it\. /);
    expect(`${foot} ${reply}`).not.toMatch(/sorry|mistake|wrong|apolog|blame/i);
  });

  it('proposes the reason from what changed, counts what is more, and fits what is kept', () => {
    expect(proposedReason(inputs, otherEngine)).toContain('“150 g pearl barley”, grams: now 400 g');
    const input = { where: 'A', segmentId: 'a', what: 'b', from: '1', to: '2' };
    expect(proposedReason([input, input, input, input, input], true)).toMatch(/; and 3 more\.$/);
    expect(proposedReason([], false)).toBe('');
    const long = { ...input, to: 'x'.repeat(2000) };
    expect(proposedReason([long], false).length).toBeLessThanOrEqual(LONGEST_REASON);
  });
});

test('several corrections in a row: each tells its own step, the same from its locks as when it was made', () => {
  const steps = [file, heavier(200_000), heavier(300_000)];
  const locks = steps.map((each) => takeLock(each).snapshot);
  const said = { reason: 'Weighed again.', on: '2026-11-30' };
  const energy = (at: number) =>
    recordedCorrection(said, locks[at] ?? '', locks[at + 1] ?? '').numbers.find(
      ({ nutrient, scope }) => nutrient === 'energyKcal' && scope.kind === 'whole',
    );
  expect(energy(0)?.to?.text).toBe(energy(1)?.from.text);
  for (const at of [0, 1]) {
    const live = needed(steps[at + 1] ?? file, locks[at]);
    expect(recordedCorrection(said, locks[at] ?? '', locks[at + 1] ?? '').numbers).toEqual(
      live.numbers,
    );
  }
  expect(recordedCorrection(said, '{', '{').numbers).toEqual([]);
});

test('a food whose values changed is told; another amount of it, or a food that nothing uses, is not', () => {
  const [line] = dish(file).recipe.lines;
  const now = changed((copy) => {
    const food = copy.foods.find(({ id }) => id === line?.foodId);
    if (food) food.version.values.protein = { kind: 'eq', mantissa: 50, scale: 0 };
    if (food) food.version.id = 'read-again';
  });
  const [food, ...more] = changedFoods(file, now);
  expect(more).toEqual([]);
  expect(food).toMatchObject({ foodId: line?.foodId });
  expect(food?.words.join()).toContain('50');
  expect(food && restsOn(file, food)).toBe(true);
  expect(food && restsOn(now, food)).toBe(false);
  expect(changedFoods(file, heavier(400_000))).toEqual([]);
});
