import { beforeAll, describe, expect, test, vi } from 'vitest';
import { amountContext } from '#lib/episode/context';
import { importEpisodeFile } from '#lib/store/import-file';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readEpisodeChanges } from '#lib/store/read-episode-changes';
import { undo } from '#lib/store/undo';
import { gramsOf } from '#lib/swap/counted-amount';
import { proposedFit } from '#lib/swap/fit-wish';
import { amountsText } from '#lib/swap/told-fit';
import { applyFit, lookForFit } from '../../app/episodes/[id]/fit/actions';
import { askedFrom } from '../../app/episodes/[id]/fit/fit-text';
import {
  keepComment,
  readOtherwise,
  removeReply,
  saveReply,
} from '../../app/episodes/[id]/publish/replies/actions';
import {
  removeSwap,
  saveSwap,
  tryOtherAmount,
  tryOtherFood,
  tryWith,
  tryWithout,
} from '../../app/episodes/[id]/publish/swaps/actions';
import { readReplies } from '../../app/episodes/[id]/publish/replies/read-replies';
import { stepsFrom, stepsText } from '../../app/episodes/[id]/publish/swaps/steps-text';
import { aDish, aFile, aFood, aLine, aReading, aRecipe, grams } from '../support/build';
import { withFreshDatabase } from '../store/database';
import { Redirected, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', () => ({
  redirect: (href: string) => {
    throw new Redirected(href);
  },
}));

withFreshDatabase();

const SLICE = {
  id: 'm',
  name: 'slice',
  qtyNum: 1,
  qtyDen: 1,
  massMg: 40_000,
  digits: 0,
  source: 's',
};
const label = { kind: 'label' as const };
const foods = [
  aFood(
    'lean',
    { energyKcal: '61', protein: '9.8', fat: '0.4' },
    { ...label, name: 'Skimmed curd' },
  ),
  aFood(
    'rich',
    { energyKcal: '112', protein: '8.9', fat: '7.2' },
    { ...label, name: 'Full-fat curd' },
  ),
  aFood(
    'bread',
    { energyKcal: '250', protein: '8.0', fat: '2.0' },
    { ...label, name: 'Bread', measures: [SLICE] },
  ),
];
const two = { low: { num: 2, den: 1 }, high: { num: 2, den: 1 } };
const recipe = aRecipe(
  'r',
  [
    grams('curd', 'lean', 200, { text: '200 g curd' }),
    aLine('bread', 'bread', {
      text: '2 slices bread',
      unit: 'piece',
      quantity: two,
      measureName: 'slice',
    }),
    grams('rich', 'rich', 20, { text: '20 g rich curd' }),
  ],
  {
    portions: [{ id: 'half', kind: 'count', name: 'a bowl', of: 2 }],
    weighings: [
      aReading('w', 'raw', 200, { shares: [{ lineId: 'curd', share: { num: 1, den: 1 } }] }),
    ],
  },
);
// 200 g at 61, 80 g at 250, 20 g at 112 kcal per 100 g: 122 + 200 + 22.4 = 344.4, half of it 172.2.

let id = '';
let dish = '';
const lines: Record<string, string> = {};
const foodIds: Record<string, string> = {};
beforeAll(async () => {
  const brought = await importEpisodeFile(
    aFile([aDish('bowl', recipe, { title: 'Curd bowl' })], foods),
    new Date(),
  );
  if (!brought.ok) throw new Error(JSON.stringify(brought.problems));
  id = brought.value.episodeId;
  const file = await read();
  const segment = file.episode.segments[0];
  dish = segment?.id ?? '';
  for (const line of segment?.recipe?.lines ?? []) lines[line.text] = line.id;
  for (const food of file.foods) foodIds[food.name] = food.id;
});

async function read() {
  const file = await readEpisodeFile(id, '2026-12-10T08:00:00.000Z', { publish: true });
  if (!file) throw new Error('no episode');
  return file;
}
const place = (steps: Parameters<typeof stepsText>[0] = [], variantId = '') => ({
  ...{ episodeId: id, segmentId: dish, variantId, steps: stepsText(steps) },
});
const stepsIn = (href: string) =>
  stepsFrom(new URL(href, 'http://x').searchParams.get('steps') ?? '');

describe('a swap', () => {
  test('is tried out step by step in the address, and written nowhere', async () => {
    const lineId = lines['200 g curd'] ?? '';
    const food = await send(tryOtherFood, {
      ...place(),
      lineId,
      foodId: foodIds['Full-fat curd'] ?? '',
    });
    const first = stepsIn(food.href);
    expect(first).toMatchObject([{ kind: 'food', lineId, massMg: null }]);
    const piece = {
      ...place(first),
      lineId: lines['2 slices bread'] ?? '',
      amount: '3',
      unit: 'one',
    };
    const second = stepsIn((await send(tryOtherAmount, piece)).href);
    expect(second[1]).toMatchObject({ kind: 'amount', massMg: 120_000 });
    const grammes = { ...piece, amount: '52.5', unit: 'g' };
    expect(stepsIn((await send(tryOtherAmount, grammes)).href)[1]).toMatchObject({
      massMg: 52_500,
    });
    const out = await send(tryWithout, { ...place(second), lineId });
    expect(stepsIn(out.href).map(({ kind }) => kind)).toEqual(['amount', 'leaveOut']);
    const add = { ...place(), foodId: foodIds.Bread ?? '', amount: '15', unit: 'g' };
    expect(stepsIn((await send(tryWith, add)).href)).toMatchObject([
      { kind: 'add', massMg: 15_000 },
    ]);
    expect((await read()).publish).toBeUndefined();
  });

  test('that cannot be tried keeps what was typed and says why', async () => {
    const lineId = lines['200 g curd'] ?? '';
    const odd = await send(tryOtherAmount, { ...place(), lineId, amount: 'lots', unit: 'g' });
    expect(odd.state.problems[0]).toMatchObject({ path: 'amount' });
    expect(odd.state.typed.amount).toBe('lots');
    const piece = await send(tryOtherAmount, { ...place(), lineId, amount: '2', unit: 'one' });
    expect(piece.state.problems[0]?.message).toContain('not counted in pieces');
    const food = await send(tryOtherFood, { ...place(), lineId, foodId: 'no-food' });
    expect(food.state.problems[0]?.message).toContain('no longer there');
    const empty = await send(saveSwap, { ...place(), rev: 0, name: 'nothing' });
    expect(empty.state.problems[0]?.message).toContain('Nothing is swapped yet');
    const steps = [{ kind: 'leaveOut' as const, lineId: 'gone' }];
    const gone = await send(saveSwap, { ...place(steps), rev: 0, name: 'gone' });
    expect(gone.state).toMatchObject({ typed: { name: 'gone' }, problems: [{ code: 'no-such' }] });
    const unnamed = await send(saveSwap, { ...place(steps), rev: 0, name: ' ' });
    expect(unnamed.state.problems[0]).toMatchObject({ path: 'name' });
  });

  test('is saved under a name, changed, and taken out', async () => {
    const steps = [{ kind: 'leaveOut' as const, lineId: lines['2 slices bread'] ?? '' }];
    const saved = await send(saveSwap, { ...place(steps), rev: 0, name: 'no bread' });
    expect(saved.href).toContain('/publish/swaps#swap-');
    const [variant] = (await read()).publish?.variants ?? [];
    expect(variant).toMatchObject({ name: 'no bread', segmentId: dish, steps });
    const more = [
      ...steps,
      { kind: 'amount' as const, lineId: lines['200 g curd'] ?? '', massMg: 300_000 },
    ];
    const rev = (await readRevisions(id))[variant?.id ?? ''] ?? 0;
    await send(saveSwap, { ...place(more, variant?.id), rev, name: 'bigger' });
    const changed = (await read()).publish?.variants ?? [];
    expect(changed).toMatchObject([{ name: 'bigger', steps: more }]);
    const stale = await send(saveSwap, { ...place(more, variant?.id), rev, name: 'again' });
    expect(stale.state.problems.length).toBeGreaterThan(0);
    const variantId = changed[0]?.id ?? '';
    const now = (await readRevisions(id))[variantId] ?? 0;
    await send(removeSwap, { episodeId: id, variantId, rev: now });
    expect((await read()).publish).toBeUndefined();
  });
});

describe('a viewer’s comment', () => {
  const one = async () => (await read()).publish?.replies[0];

  test('that asks for a swap leads to it with both foods, and has what it does for a reply', async () => {
    const comment = 'Could I use full-fat curd instead of the bread?';
    const { href } = await send(keepComment, { episodeId: id, comment });
    const reply = new URLSearchParams(href.split('?')[1]?.split('#')[0]).get('reply');
    const nothing = { number: null, nutrient: null, of: null, slip: null, page: null };
    const open = (await readReplies(id, { reply, ...nothing }))?.open;
    expect(open?.swap).toMatchObject({
      ...{ dish: 'Curd bowl', line: '2 slices bread' },
      ...{ other: 'full-fat curd', food: 'Full-fat curd' },
    });
    const asked = new URL(open?.swap?.href ?? '', 'http://a').searchParams;
    const step = { kind: 'food', foodId: foodIds['Full-fat curd'], massMg: null };
    expect(stepsFrom(asked.get('steps') ?? '')).toEqual([
      { ...step, lineId: lines['2 slices bread'] },
    ]);
    // 80 g at 112 instead of 250 kcal per 100 g are 110.4 less, half of it 55.2; a slice is a quarter more or less.
    expect(open?.answer.draft).toContain('With “full-fat curd” it is 40 to 70 calories fewer');
    const rev = (await readRevisions(id))[reply ?? ''] ?? 0;
    await send(removeReply, { episodeId: id, replyId: reply ?? '', rev: String(rev) });
  });

  test('is kept as it stands, without signs that turn letters around, read otherwise, answered and taken out', async () => {
    const empty = await send(keepComment, { episodeId: id, comment: ' \u0007 ' });
    expect(empty.state.problems[0]).toMatchObject({ path: 'comment' });
    const sent = await send(keepComment, {
      episodeId: id,
      comment: '\u202EI get <b>72</b> calories\r\n',
    });
    const kept = await one();
    expect(kept).toMatchObject({ comment: 'I get <b>72</b> calories', text: '', slip: null });
    expect(sent.href).toContain(`reply=${kept?.id ?? ''}`);
    const reading = { episodeId: id, replyId: kept?.id ?? '', nutrient: 'energyKcal', of: dish };
    const wrong = await send(readOtherwise, { ...reading, number: 'many' });
    expect(wrong.state).toMatchObject({
      typed: { number: 'many' },
      problems: [{ path: 'number' }],
    });
    expect((await send(readOtherwise, { ...reading, number: '72.5' })).href).toContain(
      'number=72.5',
    );
    const answer = {
      episodeId: id,
      replyId: kept?.id ?? '',
      rev: 1,
      nutrient: 'energyKcal',
      number: '72.5',
    };
    const none = await send(saveReply, { ...answer, segmentId: dish, slip: '', text: ' ' });
    expect(none.state.problems[0]).toMatchObject({ path: 'text' });
    await send(saveReply, { ...answer, segmentId: dish, slip: 'half', text: 'Thanks!' });
    expect(await one()).toMatchObject({
      number: 72.5,
      segmentId: dish,
      slip: 'half',
      text: 'Thanks!',
    });
    const stale = await send(saveReply, { ...answer, segmentId: dish, slip: '', text: 'Other' });
    expect(stale.state).toMatchObject({ typed: { text: 'Other' }, rev: 2 });
    await send(removeReply, { episodeId: id, replyId: kept?.id ?? '', rev: 2 });
    expect(await one()).toBeUndefined();
  });
});

describe('a fit', () => {
  const typed = async (): Promise<Record<string, string>> => {
    const asked = proposedFit(await read(), dish);
    const rows = asked.lines.flatMap(({ lineId, lowMg, highMg, stepMg }) => [
      [`low-${lineId}`, String(lowMg / 1000)],
      [`high-${lineId}`, String(highMg / 1000)],
      [`step-${lineId}`, String(stepMg)],
    ]);
    return { episodeId: id, segmentId: dish, portionId: '', ...Object.fromEntries(rows) };
  };

  test('asks by its form, and says what cannot be read, field by field', async () => {
    const texts = await typed();
    const found = await send(lookForFit, { ...texts, 'atLeast-protein': '40', strict: 'on' });
    const asked = askedFrom(new URL(found.href, 'http://x').searchParams.get('asked') ?? '');
    expect(asked).toMatchObject({
      strict: true,
      limits: [{ nutrient: 'protein', relation: 'atLeast', amount: 40 }],
    });
    expect(asked?.lines).toHaveLength(3);
    const low = `low-${lines['200 g curd'] ?? ''}`;
    const wrong = await send(lookForFit, {
      ...texts,
      [low]: 'few',
      'atLeast-protein': '9',
      'atMost-protein': '8',
    });
    expect(wrong.state.problems.map(({ path }) => path)).toEqual(
      expect.arrayContaining([low, 'atMost-protein']),
    );
    expect(wrong.state.typed[low]).toBe('few');
    const nothing = await send(lookForFit, texts);
    expect(nothing.state.problems[0]?.message).toContain('Say what it should come to');
  });

  test('says of hostile texts what is wrong and where, and keeps them', async () => {
    const texts = await typed();
    const [curd, bread] = [lines['200 g curd'] ?? '', lines['2 slices bread'] ?? ''];
    const refused = async (more: Record<string, string>) => {
      const { state } = await send(lookForFit, { ...texts, 'atLeast-protein': '40', ...more });
      expect(state.typed).toMatchObject(more);
      return state.problems.map(({ path, message }) => `${path} | ${message}`);
    };
    const [low, high, step] = [`low-${curd}`, `high-${curd}`, `step-${curd}`];
    const write = 'Write grams of 0 or more, as 120 or 12.5.';
    expect(await refused({ [high]: 'lots' })).toEqual([`${high} | 200 g curd, to: ${write}`]);
    for (const text of ['', '1e9', '-5', '100-200']) {
      expect(await refused({ [low]: text })).toEqual([`${low} | 200 g curd, from: ${write}`]);
    }
    expect(await refused({ [high]: '2000000' })).toEqual([
      `${high} | 200 g curd, to: 2000000 g is 1000000 g more than the most that fits here, 1000000 g.`,
    ]);
    for (const text of ['abc', '-5000', '0', '0.0001']) {
      expect(await refused({ [step]: text })).toEqual([
        `${step} | 200 g curd, in steps of: Choose a step.`,
      ]);
    }
    const number = 'Write a number of 0 or more, as 30 or 12.5.';
    for (const text of ['-30', '1e9', 'thirty']) {
      expect(await refused({ 'atLeast-protein': text })).toEqual([
        `atLeast-protein | protein, g, at least: ${number}`,
      ]);
    }
    expect(await refused({ 'atMost-energyKcal': '1000000000' })).toEqual([
      'atMost-energyKcal | calories, at most: 1000000000 is 999000000 more than the most that fits here, 1000000.',
    ]);
    expect(await refused({ 'atMost-protein': '39.5' })).toEqual([
      'atMost-protein | protein, g, at most: 39.5 is less than the least, 40.',
    ]);
    expect(await refused({ [low]: '1'.repeat(2001) })).toEqual([
      `${low} | 200 g curd, from: This is too long for an amount.`,
    ]);
    const all = Object.fromEntries(Object.values(lines).map((each) => [`fixed-${each}`, 'on']));
    expect(await refused({ ...all, 'atLeast-protein': '' })).toEqual([
      'targets | Say what it should come to: tick a target, or write a least or a most.',
      'lines | Every ingredient stays as it is: let at least one change.',
    ]);
    const many = Object.fromEntries(
      Array.from({ length: 60 }, (_, at) => `x${at}`).flatMap((each) => [
        [`low-${each}`, '1'],
        [`high-${each}`, '2'],
      ]),
    );
    expect((await refused(many))[0]).toContain('At most 60 ingredients can change in one search');
    expect(await refused({ portionId: 'x'.repeat(65) })).toEqual([
      'portionId | Choose what the limits are of.',
    ]);
    const stays = await send(lookForFit, {
      ...texts,
      'atLeast-protein': '40',
      [`fixed-${bread}`]: 'on',
      [`low-${bread}`]: 'none',
    });
    const asked = askedFrom(new URL(stays.href, 'http://x').searchParams.get('asked') ?? '');
    expect(asked?.lines.map(({ lineId }) => lineId)).not.toContain(bread);
    expect(asked?.lines).toHaveLength(2);
  });

  test('of an address that cannot be read is not looked for', () => {
    const limit = { nutrient: 'protein', relation: 'atLeast', amount: 40 };
    const asked = { targets: [], limits: [limit], portionId: null, lines: [], strict: false };
    expect(askedFrom(JSON.stringify(asked))).toEqual(asked);
    const twice = { ...asked, limits: [limit, { ...limit, amount: 50 }] };
    expect(askedFrom(JSON.stringify(twice))).toBeNull();
    expect(askedFrom('{"targets":')).toBeNull();
  });

  test('of a dish with all the ingredients that it may have goes into the recipe', async () => {
    const long = JSON.stringify(Array.from({ length: 400 }, () => ['x'.repeat(36), 100_000]));
    const sent = { episodeId: id, segmentId: dish, steps: '[]', was: long };
    const { state } = await send(applyFit, sent);
    expect(state.problems[0]?.message).toContain('look for them again');
  });

  test('is put into the recipe in one act, and undone in one', async () => {
    const before = await read();
    const steps = [
      { kind: 'amount' as const, lineId: lines['200 g curd'] ?? '', massMg: 250_000 },
      { kind: 'amount' as const, lineId: lines['2 slices bread'] ?? '', massMg: 120_000 },
    ];
    const sent = { episodeId: id, segmentId: dish, steps: stepsText(steps) };
    const stale = await send(applyFit, { ...sent, was: '[]' });
    expect(stale.state.problems[0]?.message).toContain('look for them again');
    await send(applyFit, { ...sent, was: amountsText(before, dish) });
    const after = await read();
    const put = after.episode.segments[0]?.recipe;
    const curd = put?.lines.find(({ id: lineId }) => lineId === lines['200 g curd']);
    expect(put?.weighings).toEqual([]);
    expect(curd?.text).toBe('250 g curd');
    expect(put && curd && gramsOf(curd, put, amountContext(after))?.valueMg).toBe(250_000);
    const bread = put?.lines.find(({ id: lineId }) => lineId === lines['2 slices bread']);
    expect(bread).toMatchObject({
      text: '3 slices bread',
      quantity: { low: { num: 3, den: 1 } },
      planned: null,
    });
    const [last] = (await readEpisodeChanges(id, { take: 1 })).acts;
    const back = await undo(last?.groupId ?? '', { actor: DEFAULT_CREATOR_ID, at: new Date() });
    expect(back.ok).toBe(true);
    expect((await read()).episode).toEqual(before.episode);
  });
});
