import { beforeAll, describe, expect, test, vi } from 'vitest';
import { cellOf } from '#lib/foods/food';
import { description } from '#lib/publish/description';
import { allergenQuestions } from '#lib/publish/allergen-questions';
import { lotMg } from '#lib/shopping/shopping-list';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { readFoodVersions, readStoredFood } from '#lib/store/read-foods';
import { readKitchen } from '#lib/store/read-kitchen';
import { nextLockSeq, readLastLock } from '#lib/store/read-locks';
import { readLot } from '#lib/store/read-lot';
import { readLastLabelRule } from '#lib/store/read-last-label-rule';
import { priceWords } from '#lib/shopping/price-words';
import { readFoodsInUse, readPantryFoods } from '#lib/store/read-foods-in-use';
import { readPrices } from '#lib/store/read-prices';
import { readShopNames } from '#lib/store/read-shops';
import {
  addLink,
  addShot,
  addStep,
  makeDay,
  removeStep,
  saveDay,
  saveStep,
  switchKind,
} from '../../app/episodes/[id]/day/actions';
import { GET as calendar } from '../../app/episodes/[id]/day/day-sheet.ics/route';
import { GET as eveningFile } from '../../app/episodes/[id]/day/evening-before.txt/route';
import { GET as sheetText } from '../../app/episodes/[id]/day/day-sheet.txt/route';
import {
  addWebLink,
  answerAllergen,
  askAgain,
  copyDescription,
  removeWebLink,
  saveTexts,
} from '../../app/episodes/[id]/publish/actions';
import { GET as shoppingFile } from '../../app/episodes/[id]/shopping/shopping.txt/route';
import {
  addChange,
  addOven,
  addScale,
  makeKitchen,
  removeOven,
  saveKitchen,
  saveScale,
  saveSpreads,
} from '../../app/kitchen/actions';
import {
  addAllergen,
  addFood,
  keepSameLabel,
  readLabelAgain,
  saveFood,
  takeBackReading,
} from '../../app/pantry/actions';
import { addPack, addPrice } from '../../app/pantry/pack-actions';
import {
  addLot,
  answerStock,
  emptyLot,
  keepsOpen,
  moveStock,
  noneLeft,
  openLot,
  saveLot,
} from '../../app/pantry/stock-actions';
import { withFreshDatabase, AT } from '../store/database';
import { demoFile, send } from './page-support';

const saidOf = async (foodId: string) => (await readPantryFoods([foodId]))[0]?.said ?? null;

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', async () => {
  const support = await import('./page-support');
  return {
    redirect: (href: string) => {
      throw new support.Redirected(href);
    },
  };
});

const NOW = '2026-12-10T08:00:00.000Z';

async function read(episodeId: string) {
  const file = await readEpisodeFile(episodeId, NOW);
  if (!file) throw new Error(`no episode ${episodeId}`);
  const revs = await readRevisions(episodeId);
  return { file, rev: (id: string) => revs[id] ?? 0 };
}

async function importDemo(withDay: boolean): Promise<string> {
  const demo = demoFile();
  const done = await importEpisodeFile(withDay ? demo : { ...demo, day: null }, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return done.value.episodeId;
}

const STEP = {
  title: 'Toast the seeds',
  role: 'cook',
  low: '3',
  usual: '5',
  high: '8',
  hands: 'hands',
  burners: '1',
  racks: '0',
  ovenId: '',
  oven: '',
  ovenUnit: 'C',
  core: '',
  coreUnit: 'C',
  rest: '',
};

describe('the day by its forms', () => {
  withFreshDatabase();
  let id = '';
  beforeAll(async () => {
    id = await importDemo(false);
  });

  test('an episode without a filming day gets one with all its segments, once', async () => {
    expect((await read(id)).file.day).toBeNull();
    await send(makeDay, { episodeId: id });
    const { file } = await read(id);
    expect(file.day).toMatchObject({ kind: 'asLived', startMin: 540, wrapByMin: null });
    const filmed = file.day?.segments.map(({ segmentId }) => segmentId);
    expect(filmed).toEqual(file.episode.segments.map((segment) => segment.id));
    const again = await send(makeDay, { episodeId: id });
    expect(again.state.done).toContain('already');
    expect((await read(id)).file.day?.id).toBe(file.day?.id);
  });

  test('date, times and what is filmed change together; a stale tab is told', async () => {
    const { file, rev } = await read(id);
    const day = file.day;
    const [, second] = file.episode.segments;
    if (!day || !second) throw new Error('no day');
    const sent = {
      episodeId: id,
      dayId: day.id,
      rev: rev(day.id),
      date: '2026-12-19',
      kind: 'packed',
      start: '8.15',
      wrapBy: '24:30',
      mealGap: '120',
      lightMargin: '45',
      outfit: ' Blue apron ',
      [`film-${second.id}`]: 'on',
    };
    const saved = await send(saveDay, sent);
    expect(saved.state.problems).toEqual([]);
    const after = (await read(id)).file.day;
    expect(after).toMatchObject({
      date: '2026-12-19',
      kind: 'packed',
      startMin: 495,
      wrapByMin: 1470,
      lightMarginMin: 45,
      outfit: 'Blue apron',
    });
    expect(after?.segments.map(({ segmentId }) => segmentId)).toEqual([second.id]);
    const stale = await send(saveDay, { ...sent, date: '2026-12-20' });
    expect(stale.state.problems.map(({ code }) => code)).toContain('conflict');
    expect(stale.state.typed.date).toBe('2026-12-20');
    expect((await read(id)).file.day?.date).toBe('2026-12-19');
  });

  test('a wrap before the start and a clock time that is none are refused at their fields', async () => {
    const { file, rev } = await read(id);
    const dayId = file.day?.id ?? '';
    const when = { date: '2026-12-19', kind: 'packed', lightMargin: '30' };
    const sent = { episodeId: id, dayId, rev: rev(dayId), ...when };
    const early = await send(saveDay, { ...sent, start: '10:00', wrapBy: '9:00', mealGap: '800' });
    expect(early.state.problems.map(({ path }) => path)).toEqual(['mealGap']);
    expect(early.state.problems[0]?.message).toContain('80 more than the most that fits');
    const wrap = await send(saveDay, { ...sent, start: '10:00', wrapBy: '9:00', mealGap: '80' });
    expect(wrap.state.problems).toMatchObject([{ path: 'wrapBy' }]);
    const none = await send(saveDay, { ...sent, start: 'noon', wrapBy: '', mealGap: '80' });
    expect(none.state.problems).toMatchObject([{ path: 'start' }]);
    expect(none.state.typed.start).toBe('noon');
  });

  test('the kind is switched by one button', async () => {
    const { file, rev } = await read(id);
    const dayId = file.day?.id ?? '';
    await send(switchKind, { episodeId: id, dayId, rev: rev(dayId), kind: 'asLived' });
    expect((await read(id)).file.day?.kind).toBe('asLived');
  });

  test('a step is added, changed in °F, tied, gets a shot, and is taken out', async () => {
    const { file } = await read(id);
    const segment = file.episode.segments[1];
    if (!segment) throw new Error('no segment');
    const added = await send(addStep, { episodeId: id, segmentId: segment.id, ...STEP });
    expect(added.href).toMatch(/day\?at=.+#row-/);
    const find = async () => {
      const now = await read(id);
      const at = now.file.episode.segments.find((each) => each.id === segment.id);
      const step = at?.steps.find(({ title }) => title.startsWith('Toast the seeds'));
      return { ...now, step, shots: at?.shots ?? [] };
    };
    const first = await find();
    expect(first.step).toMatchObject({
      lowS: 180,
      usualS: 300,
      highS: 480,
      burners: 1,
      oven: null,
    });
    const stepId = first.step?.id ?? '';

    const oven = { ovenId: '', oven: '350', ovenUnit: 'F', racks: '1', burners: '0' };
    const saved = await send(saveStep, {
      ...STEP,
      ...oven,
      episodeId: id,
      stepId,
      rev: first.rev(stepId),
      title: 'Toast the seeds in the oven',
      hands: 'alone',
    });
    expect(saved.href).toContain(stepId);
    // 350 °F is 176.667 °C: °C = (°F − 32) × 5/9, NIST SP 811, Appendix B.9 [M].
    expect((await find()).step).toMatchObject({
      oven: { milliC: 176_667 },
      racks: 1,
      hands: false,
    });

    const other = segment.steps[0]?.id ?? '';
    const link = { fromStepId: stepId, fromAnchor: 'end', toStepId: other, toAnchor: 'start' };
    await send(addLink, { ...link, episodeId: id, minLag: '2', maxLag: '', reason: 'must cool' });
    const links = (await read(id)).file.episode.links;
    expect(links.find(({ reason }) => reason === 'must cool')).toMatchObject({
      fromStepId: stepId,
      minLagS: 120,
      maxLagS: null,
    });
    const self = await send(addLink, { ...link, toStepId: stepId, episodeId: id, reason: '' });
    expect(self.state.problems).toMatchObject([{ path: 'toStepId' }]);

    const shot = { title: 'Seeds jump', stepId, framing: 'close', length: '0:08' };
    await send(addShot, { ...shot, episodeId: id, segmentId: segment.id });
    expect((await find()).shots.at(-1)).toMatchObject({ title: 'Seeds jump', stepId, lengthS: 8 });

    const last = await find();
    const gone = { episodeId: id, segmentId: segment.id, stepId, rev: last.rev(stepId) };
    await send(removeStep, gone);
    const after = await find();
    expect(after.step).toBeUndefined();
    expect(after.shots.at(-1)).toMatchObject({ title: 'Seeds jump', stepId: null });
    expect(after.file.episode.links.some(({ reason }) => reason === 'must cool')).toBe(false);
  });

  test('a step that cannot be is told field by field, with what was typed kept', async () => {
    const { file } = await read(id);
    const segmentId = file.episode.segments[1]?.id ?? '';
    const wrong = { ...STEP, title: '', low: '9', high: '4', burners: '13', oven: '400' };
    const refused = await send(addStep, { episodeId: id, segmentId, ...wrong });
    expect(refused.state.problems.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['title', 'burners']),
    );
    expect(refused.state.typed).toMatchObject({ low: '9', oven: '400' });
    const order = await send(addStep, {
      episodeId: id,
      segmentId,
      ...wrong,
      title: 'x',
      burners: '1',
    });
    expect(order.state.problems.map(({ path }) => path)).toEqual(['oven', 'low', 'high']);
    expect(order.state.problems[0]?.message).toBe(
      '400 °C is 50 °C more than the most that fits here, 350 °C.',
    );
  });

  test('the files of the day come as downloads, and a missing episode is not found', async () => {
    const params = Promise.resolve({ id });
    const request = new Request('http://127.0.0.1/');
    const ics = await calendar(request, { params });
    expect(ics.headers.get('content-type')).toContain('text/calendar');
    expect(await ics.text()).toMatch(/^BEGIN:VCALENDAR\r\n/);
    const text = await (await sheetText(request, { params })).text();
    expect(text).toMatch(/^DAY SHEET: /);
    const evening = await (await eveningFile(request, { params })).text();
    expect(evening).toMatch(/^THE EVENING BEFORE: /);
    const list = await (await shoppingFile(request, { params })).text();
    expect(list).toMatch(/^SHOPPING: /);
    const nowhere = { params: Promise.resolve({ id: 'nowhere' }) };
    expect((await calendar(request, nowhere)).status).toBe(404);
    expect((await sheetText(request, nowhere)).status).toBe(404);
    expect((await eveningFile(request, nowhere)).status).toBe(404);
    expect((await shoppingFile(request, nowhere)).status).toBe(404);
  });
});

describe('publishing', () => {
  withFreshDatabase();
  let id = '';
  beforeAll(async () => {
    id = await importDemo(true);
  });

  test('copying locks the numbers and keeps the very text, in one act', async () => {
    const { text } = description((await read(id)).file);
    // A browser sends line ends of a hidden field as CRLF (HTML, multipart/form-data encoding).
    const sent = await send(copyDescription, {
      episodeId: id,
      text: text.replaceAll('\n', '\r\n'),
    });
    expect(sent.state.problems).toEqual([]);
    const lock = await readLastLock(id);
    expect(lock?.seq).toBe(1);
    expect(lock?.published.map((published) => published.text)).toEqual([text]);
    const snapshot = JSON.parse(lock?.snapshot ?? '') as { file: { episode: { id: string } } };
    expect(snapshot.file.episode.id).toBe(id);
    // Copied once more it is kept with the same lock, which still holds.
    await send(copyDescription, { episodeId: id, text });
    const kept = await readLastLock(id);
    expect([kept?.seq, kept?.published.length]).toEqual([1, 2]);
  });

  test('a text that is not the description any more locks nothing', async () => {
    const { file, rev } = await read(id);
    const { text } = description(file);
    await send(saveTexts, { episodeId: id, rev: rev(id), hook: 'Another hook.', disclosure: '' });
    const refused = await send(copyDescription, { episodeId: id, text });
    expect(refused.state.problems).toMatchObject([{ code: 'changed' }]);
    expect(await nextLockSeq(id)).toBe(2);
    expect(description((await read(id)).file).text).toContain('Another hook.');
  });

  test('an allergen is confirmed, then published; asked again, then proposed once more', async () => {
    const [question] = allergenQuestions((await read(id)).file);
    if (!question) throw new Error('the demo proposes an allergen');
    const { foodId, allergen, words } = question;
    const before = description((await read(id)).file).unconfirmedAllergens.length;
    await send(answerAllergen, { episodeId: id, foodId, allergen, standing: 'confirmed' });
    const said = await read(id);
    const made = description(said.file);
    expect(made.unconfirmedAllergens.length).toBeLessThan(before);
    expect(made.text).toMatch(new RegExp(`contains [^\n]*${words}`));
    const facts = said.file.foods.flatMap((food) => food.allergens);
    const fact = facts.find(({ reason }) => reason === 'said on the publish page');
    const factId = fact?.id ?? '';
    await send(askAgain, { episodeId: id, factId, rev: said.rev(factId) });
    const again = description((await read(id)).file);
    expect(again.unconfirmedAllergens.length).toBe(before);
  });

  test('links are whole addresses', async () => {
    const bad = await send(addWebLink, {
      episodeId: id,
      label: 'My page',
      url: 'javascript:alert(1)',
    });
    expect(bad.state.problems).toMatchObject([{ path: 'url' }]);
    await send(addWebLink, { episodeId: id, label: 'My page', url: 'https://example.org/a' });
    const now = await read(id);
    const link = now.file.episode.webLinks.at(-1);
    expect(link).toMatchObject({ label: 'My page', url: 'https://example.org/a' });
    const linkId = link?.id ?? '';
    await send(removeWebLink, { episodeId: id, linkId, rev: now.rev(linkId) });
    expect((await read(id)).file.episode.webLinks.some((each) => each.id === linkId)).toBe(false);
  });
});

const LABEL = {
  name: 'Skerry oat drink',
  section: 'drinks',
  rule: 'us',
  basis: 'serving',
  servingG: '',
  servingMl: '240',
  servingText: '1 cup',
  perPack: '4',
  carbBasis: 'total',
  state: 'asIs',
  'value-energyKcal': '120',
  'value-fat': '5',
  'value-saturated': '0.5',
  'value-transFat': '0',
  'value-carbohydrate': '16',
  'value-fibre': '<1',
  'value-protein': '3',
  'may-soy': 'on',
  'contains-glutenCereals': 'on',
  packName: 'Carton 1 l',
  packMl: '1000',
  price: '2.5',
  currency: 'usd',
};

describe('the pantry by its forms', () => {
  withFreshDatabase();
  let foodId = '';

  test('a food is read from its label with the digits printed, blanks missing', async () => {
    const added = await send(addFood, LABEL);
    expect(added.state.problems).toEqual([]);
    foodId = added.href.replace('/pantry/foods/', '');
    const stored = await readStoredFood(foodId);
    const version = stored?.food.version;
    if (!stored || !version) throw new Error('no food');
    expect(cellOf(version.values, 'saturated')).toEqual({ kind: 'eq', mantissa: 5, scale: 1 });
    expect(cellOf(version.values, 'transFat')).toEqual({ kind: 'eq', mantissa: 0, scale: 0 });
    expect(cellOf(version.values, 'fibre')).toEqual({ kind: 'lessThan', mantissa: 1, scale: 0 });
    expect(cellOf(version.values, 'sodium')).toEqual({ kind: 'missing' });
    expect(version.serving).toMatchObject({ volumeMl: 240, massMg: null, perPack: 4 });
    const standings = stored.food.allergens.map((fact) => `${fact.allergen} ${fact.standing}`);
    expect(standings.sort()).toEqual(['glutenCereals declared', 'soy mayContain']);
    expect(stored.packs).toMatchObject([
      { name: 'Carton 1 l', netMl: 1000, price: { minor: 250, currency: 'USD' } },
    ]);
  });

  test('what cannot be is told at its field, and kept only with a reason', async () => {
    const wrong = { ...LABEL, name: 'Wrong', 'value-saturated': '7' };
    const refused = await send(addFood, wrong);
    expect(refused.state.problems).toMatchObject([
      { path: 'value-saturated', code: 'saturated-above-fat' },
    ]);
    expect(refused.state.typed['value-saturated']).toBe('7');
    const kept = await send(addFood, { ...wrong, keepReason: 'the label says so' });
    const stored = await readStoredFood(kept.href.replace('/pantry/foods/', ''));
    expect(stored?.food.version.kept).toEqual([
      { code: 'saturated-above-fat', reason: 'the label says so' },
    ]);
  });

  test('a value that is none, no serving, and a price without its currency are told', async () => {
    const texts = { ...LABEL, 'value-fat': 'some', servingMl: '', currency: '' };
    const refused = await send(addFood, texts);
    const paths = refused.state.problems.map(({ path }) => path);
    expect(paths.sort()).toEqual(['currency', 'servingG', 'value-fat']);
    expect((await readFoodsInUse({ words: 'Skerry' })).rows).toHaveLength(1);
  });

  test('reading the label again adds a version and leaves the old one', async () => {
    const again = await send(readLabelAgain, { ...LABEL, foodId, 'value-protein': '4' });
    expect(again.href).toBe(`/pantry/foods/${foodId}`);
    const versions = await readFoodVersions(foodId);
    expect(versions.map(({ seq }) => seq)).toEqual([2, 1]);
    expect(cellOf(versions[1]?.values ?? {}, 'protein')).toMatchObject({ mantissa: 3 });
    const stored = await readStoredFood(foodId);
    expect(cellOf(stored?.food.version.values ?? {}, 'protein')).toMatchObject({ mantissa: 4 });
  });

  test('the same label is read again by one press, and that reading taken back', async () => {
    const before = (await readStoredFood(foodId))?.food.version;
    const same = await send(keepSameLabel, { foodId });
    expect(same.href).toBe(`/pantry/foods/${foodId}`);
    const now = (await readStoredFood(foodId))?.food.version;
    expect(now).toMatchObject({ seq: 3, values: before?.values, serving: before?.serving });
    expect(now?.id).not.toBe(before?.id);
    const back = await send(takeBackReading, { foodId, versionId: now?.id ?? '' });
    expect(back.href).toBe(`/pantry/foods/${foodId}`);
    expect((await readStoredFood(foodId))?.food.version).toEqual(before);
    // What stands behind the reading in use is not taken back by itself.
    const first = (await readFoodVersions(foodId)).at(-1);
    const refused = await send(takeBackReading, { foodId, versionId: first?.id ?? '' });
    expect(refused.state.problems).toMatchObject([{ code: 'gone' }]);
  });

  test('servings that the pack cannot hold are told; a likely slip is put right without keeping', async () => {
    const texts = { ...LABEL, name: 'Slipped', perPack: '40' };
    const refused = await send(addFood, texts);
    expect(refused.state.problems).toMatchObject([{ path: 'perPack', code: 'servings-not-pack' }]);
    const put = await send(addFood, { ...texts, mend: 'value-protein=4&name=x' });
    expect(put.state.typed).toMatchObject({ name: 'Slipped', 'value-protein': '4' });
    expect((await readFoodsInUse({ words: 'Slipped' })).rows).toEqual([]);
  });

  test('an EU label keeps 100 g first and the serving beside it', async () => {
    const eu = {
      name: 'Oat quark',
      section: 'other',
      rule: 'eu',
      basis: 'per100g',
      secondBasis: 'serving',
      servingG: '30',
      carbBasis: 'available',
      state: 'asIs',
      'value-fat': '12',
      'second-fat': '3.6',
    };
    const added = await send(addFood, eu);
    const stored = await readStoredFood(added.href.replace('/pantry/foods/', ''));
    expect(stored?.food.version).toMatchObject({
      basis: 'per100g',
      secondColumn: { basis: 'serving', values: { fat: { mantissa: 36, scale: 1 } } },
    });
    expect(await readLastLabelRule()).toBe('eu');
    const none = await send(addFood, { ...eu, servingG: '' });
    expect(none.state.problems).toMatchObject([{ path: 'servingG' }]);
  });

  test('name, packs and allergens change; a stale name is told', async () => {
    const rev = (await readStoredFood(foodId))?.revs[foodId] ?? 0;
    const sent = { foodId, rev, name: 'Skerry oat drink, blue', section: 'drinks' };
    expect((await send(saveFood, sent)).state.problems).toEqual([]);
    const stale = await send(saveFood, { ...sent, name: 'Green' });
    expect(stale.state.problems).toMatchObject([{ path: 'name', code: 'conflict' }]);
    await send(addPack, { foodId, foodName: 'Skerry', packG: '250' });
    await send(addAllergen, { foodId, allergen: 'treeNuts', standing: 'denied' });
    const stored = await readStoredFood(foodId);
    expect(stored?.packs.map(({ name }) => name).sort()).toEqual(['Carton 1 l', 'Skerry']);
    expect(stored?.food.allergens.map(({ standing }) => standing)).toContain('denied');
  });

  test('stock is a ledger: moves add up, and no more is taken than is there', async () => {
    const put = await send(addLot, { foodId, grams: '500', place: 'fridge', useBy: '2026-12-20' });
    expect(put.href).toContain(`/pantry/foods/${foodId}#row-`);
    const lotId = put.href.split('#row-')[1] ?? '';
    await send(moveStock, { lotId, kind: 'used', grams: '120' });
    await send(moveStock, { lotId, kind: 'counted', grams: '400' });
    const over = await send(moveStock, { lotId, kind: 'thrownAway', grams: '401' });
    expect(over.state.problems).toMatchObject([{ path: 'grams' }]);
    expect(over.state.problems[0]?.message).toContain('1 g more than is there');
    const lot = await readLot(lotId);
    if (!lot) throw new Error('no lot');
    expect(lot.moves.map(({ kind, deltaMg }) => [kind, deltaMg])).toEqual([
      ['bought', 500_000],
      ['used', -120_000],
      ['counted', 20_000],
    ]);
    expect(lotMg(lot)).toBe(400_000);
    const [food] = await readPantryFoods([foodId]);
    await send(saveLot, {
      lotId,
      rev: food?.revs[lotId] ?? 0,
      place: 'door',
      useBy: '',
      openedOn: '',
    });
    expect(await readLot(lotId)).toMatchObject({ place: 'door', useBy: null });
    expect((await readLot(lotId))?.moves).toHaveLength(3);
  });

  test('a lot is opened, used up and thrown away by one press; a use-by before the opening is refused', async () => {
    const lot = { foodId, grams: '300', place: 'door', useBy: '2020-01-02' };
    const wrong = await send(addLot, { ...lot, openedOn: '2020-01-03' });
    expect(wrong.state.problems).toMatchObject([{ path: 'useBy' }]);
    expect(wrong.state.problems[0]?.message).toContain('Opened on Fri 3 Jan');
    expect(wrong.state.typed).toMatchObject({ grams: '300' });
    const past = (await send(addLot, lot)).href.split('#row-')[1] ?? '';
    const opened = await send(openLot, { lotId: past, rev: '1' });
    expect(opened.state.problems[0]?.message).toContain('is past');
    const fresh = (await send(addLot, { ...lot, useBy: '' })).href.split('#row-')[1] ?? '';
    await send(openLot, { lotId: fresh, rev: '1' });
    expect((await readLot(fresh))?.openedOn).toMatch(/^20\d\d-/);
    await send(emptyLot, { lotId: fresh, kind: 'used' });
    await send(emptyLot, { lotId: past, kind: 'thrownAway' });
    // Pressed twice, nothing more is taken.
    await send(emptyLot, { lotId: past, kind: 'thrownAway' });
    const moves = async (id: string) => (await readLot(id))?.moves.map((move) => move.deltaMg);
    expect(await moves(fresh)).toEqual([300_000, -300_000]);
    expect(await moves(past)).toEqual([300_000, -300_000]);
  });

  test('a food is said to be there, not enough or not there; none left empties its lots', async () => {
    const said = async () => (await saidOf(foodId))?.answer?.is;
    expect(await said()).toBeUndefined();
    for (const answer of ['have', 'notEnough', 'none', 'have']) {
      expect((await send(answerStock, { foodId, answer })).state.problems).toEqual([]);
      expect(await said()).toBe(answer);
    }
    expect((await send(answerStock, { foodId, answer: 'maybe' })).state.problems).toHaveLength(1);
    await send(keepsOpen, { foodId, openedDays: '5', openedSource: 'the carton' });
    expect((await saidOf(foodId))?.opened).toEqual({ days: 5, source: 'the carton' });
    expect(await said()).toBe('have');
    await send(keepsOpen, { foodId, openedDays: '' });
    expect((await saidOf(foodId))?.opened).toBeNull();
    await send(noneLeft, { foodId });
    expect(await said()).toBe('none');
    const [food] = await readPantryFoods([foodId]);
    expect(food?.lots.map(lotMg)).toEqual(food?.lots.map(() => 0));
  });

  test('packs and prices keep their shop, day and offer; sizes and dates that cannot be are told', async () => {
    const pack = { foodId, foodName: 'Skerry', packG: '400', packDrained: '240', gtin: '' };
    const seen = { price: '5', currency: 'usd', shop: 'Quay market', seenOn: '2026-01-05' };
    const offer = { offerCount: '3', offerMost: '2', offerUntil: '2026-01-12' };
    const added = await send(addPack, { ...pack, ...seen, ...offer });
    expect(added.state.problems).toEqual([]);
    const price = (await readPrices(foodId)).find(({ shopName }) => shopName !== null);
    expect(price).toMatchObject({
      shopName: 'Quay market',
      price: { minor: 500, count: 3, most: 2, until: '2026-01-12', seenOn: '2026-01-05' },
    });
    expect(price && priceWords(price.price, price.shopName)).toBe(
      '3 for USD 5.00, Quay market, seen Mon 5 Jan, at most 2 times, until 12 Jan',
    );
    // The same shop in other letters is the same shop.
    await send(addPrice, { packId: price?.packId ?? '', ...seen, shop: 'QUAY market', price: '2' });
    expect(new Set((await readPrices(foodId)).map((each) => each.price.shopId)).size).toBe(2);
    expect((await readShopNames()).map(({ name }) => name)).toEqual(['Quay market']);

    const faults = async (sent: Record<string, string>) =>
      (await send(addPack, { ...pack, ...sent })).state.problems.map(({ path }) => path);
    expect(await faults({ packG: '0', packDrained: '' })).toEqual(['packG']);
    expect(await faults({ packMl: '0' })).toEqual(['packMl']);
    expect(await faults({ packDrained: '401' })).toEqual(['packDrained']);
    expect(await faults({ price: '-2', currency: 'USD' })).toEqual(['price']);
    expect(await faults({ price: '2', currency: '' })).toEqual(['currency']);
    expect(await faults({ shop: 'Quay market' })).toEqual(['price']);
    expect(await faults({ packG: '', packMl: '500', packDrained: '', packStep: '50' })).toEqual([
      'packG',
    ]);
    expect(await faults({ ...seen, seenOn: '2126-01-01' })).toEqual(['seenOn']);
    expect(await faults({ ...seen, offerUntil: '2026-01-04' })).toEqual(['offerUntil']);
    expect(await faults({ ...seen, offerCount: '0' })).toEqual(['offerCount']);
  });
});

describe('the kitchen by its forms', () => {
  withFreshDatabase();
  const stored = async () => {
    const found = await readKitchen();
    if (!found) throw new Error('no kitchen');
    return found;
  };

  test('the kitchen that is taken for granted is kept, once', async () => {
    expect(await readKitchen()).toBeNull();
    await send(makeKitchen, {});
    await send(makeKitchen, {});
    expect((await stored()).kitchen).toMatchObject({ burners: 4, zone: 'UTC' });
  });

  test('place and burners; a zone that nobody knows and half a place are refused', async () => {
    const { id, revs } = await stored();
    const sent = { kitchenId: id, rev: revs[id] ?? 0, name: 'Quay', burners: '2' };
    const bad = await send(saveKitchen, { ...sent, zone: 'Europe/Nowhere', lat: '55', lon: '' });
    expect(bad.state.problems.map(({ path }) => path)).toEqual(['zone', 'lon']);
    const half = await send(saveKitchen, {
      ...sent,
      zone: 'Europe/Copenhagen',
      lat: '55',
      lon: '',
    });
    expect(half.state.problems).toMatchObject([{ path: 'lon' }]);
    const far = await send(saveKitchen, { ...sent, zone: 'UTC', lat: '95', lon: '10' });
    expect(far.state.problems[0]?.message).toContain('95 is 5 more than the most');
    await send(saveKitchen, { ...sent, zone: 'Europe/Copenhagen', lat: '-55.9', lon: '10.98' });
    expect((await stored()).kitchen).toMatchObject({ name: 'Quay', lat: -55.9, burners: 2 });
  });

  test('ovens with what was measured, scales, and measures by eye', async () => {
    const { id } = await stored();
    const oven = { name: 'Small', racks: '1', cold: '68', coldUnit: 'F', heat: '3', cool: '9' };
    await send(addOven, { kitchenId: id, ...oven, most: '527', mostUnit: 'F' });
    const added = (await stored()).kitchen.ovens.at(-1);
    // 68 °F is 20 °C: NIST SP 811, Appendix B.9 [M].
    expect(added).toMatchObject({ name: 'Small', coldMilliC: 20_000, mostMilliC: 275_000 });
    expect(added).toMatchObject({ heatSPerC: 3 });
    const ovenId = added?.id ?? '';
    const measured = { from: '20', fromUnit: 'C', to: '180', toUnit: 'C', took: '9.5' };
    await send(addChange, { ovenId, ...measured });
    expect((await stored()).kitchen.ovens.at(-1)?.changes).toMatchObject([
      { fromMilliC: 20_000, toMilliC: 180_000, seconds: 570 },
    ]);
    const hot = await send(addChange, { ovenId, ...measured, to: '360' });
    expect(hot.state.problems).toMatchObject([{ path: 'to' }]);
    const revs = (await stored()).revs;
    await send(removeOven, { partId: ovenId, rev: revs[ovenId] ?? 0 });
    expect((await stored()).kitchen.ovens).toHaveLength(1);
    for (let more = 0; more < 5; more += 1) await send(addOven, { kitchenId: id, ...oven });
    const seventh = await send(addOven, { kitchenId: id, ...oven });
    expect(seventh.state.problems).toMatchObject([{ code: 'too-many' }]);
    for (const each of (await stored()).kitchen.ovens.slice(1)) {
      await send(removeOven, { partId: each.id, rev: 1 });
    }
    expect((await stored()).kitchen.ovens).toHaveLength(1);

    await send(addScale, { kitchenId: id, name: 'Fine', resolution: '0.1', accuracy: '0.05' });
    const scale = (await stored()).kitchen.scales.at(-1);
    expect(scale).toMatchObject({ resolutionMg: 100, accuracyPpm: 500 });
    const scaleId = scale?.id ?? '';
    const zero = { scaleId, rev: 1, name: 'Fine', resolution: '0', accuracy: '0.05' };
    expect((await send(saveScale, zero)).state.problems).toMatchObject([{ path: 'resolution' }]);

    const now = await stored();
    const revOf = Object.fromEntries(
      now.kitchen.spreads.map((spread) => [`rev-${spread.kind}`, now.revs[spread.id] ?? 0]),
    );
    const eyes = { spoon: '12.5', cup: '10', piece: '20', slice: '20', handful: '30' };
    const percents = { ...eyes, portion: '15' };
    const spreads = await send(saveSpreads, { kitchenId: id, ...revOf, ...percents });
    expect(spreads.state.problems).toEqual([]);
    const kept = (await stored()).kitchen.spreads.find(({ kind }) => kind === 'spoon');
    expect(kept?.permille).toBe(125);
    const stale = await send(saveSpreads, { kitchenId: id, ...revOf, ...percents, spoon: '13' });
    expect(stale.state.problems.map(({ code }) => code)).toContain('conflict');
    const wide = await send(saveSpreads, { kitchenId: id, ...revOf, ...percents, cup: '120' });
    expect(wide.state.problems[0]?.message).toBe(
      '120 % is 20 % more than the most that fits here, 100 %.',
    );
  });
});
