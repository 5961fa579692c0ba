import { expect, it } from 'vitest';
import { v7 as uuid } from 'uuid';
import { actWords } from '#lib/overview/change-words';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readAllChanges } from '#lib/store/read-all-changes';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import type { Edit } from '#lib/store/command';
import { AT, withFreshDatabase } from './database';

withFreshDatabase();

const act = async (label: string, edit: Edit) => {
  const written = await write({ actor: DEFAULT_CREATOR_ID, label, at: AT, edits: [edit] });
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  return written.value;
};
const wordsOf = async (page: { before?: number; take?: number } = {}) => {
  const { acts, names, next } = await readAllChanges(page);
  const told = acts.map(({ lines }) => actWords(lines, { names, region: 'EU', zone: 'UTC' }));
  return { words: told.map((each) => each.join('. ')), acts, next };
};

it('tells what was done in the pantry and the kitchen, the newest first, and each is undone', async () => {
  const [foodId, lotId, kitchenId] = [uuid(), uuid(), uuid()];
  await act('Begin a kitchen', {
    op: 'create',
    entity: 'Kitchen',
    row: {
      id: kitchenId,
      name: 'Galley',
      zone: 'Europe/Oslo',
      lat: null,
      lon: null,
      burners: 4,
      cameraChangeS: null,
      counterPlaces: null,
      cleanDownS: 300,
      videoMbps: null,
    },
  });
  await act('Add a food', {
    op: 'create',
    entity: 'Food',
    row: {
      id: foodId,
      kind: 'label',
      name: 'Quayside skyr',
      section: 'dairyAndEggs',
      mergedIntoId: null,
      witnessId: null,
      recipeId: null,
    },
  });
  await act('Put it into stock', {
    op: 'create',
    entity: 'StockLot',
    row: { id: lotId, foodId, place: 'fridge', openedOn: null, useBy: '2026-12-20' },
  });
  const { words, acts } = await wordsOf();
  expect(words).toHaveLength(3);
  expect(words[0]).toContain('Quayside skyr');
  expect(words[2]).toContain('Galley');
  const undone = await undo(acts[0]?.groupId ?? '', { actor: DEFAULT_CREATOR_ID, at: AT });
  expect(undone.ok).toBe(true);
  expect((await wordsOf()).words).toHaveLength(4);
});

it('comes in pages that leave none out and tell none twice', async () => {
  const all = (await wordsOf()).acts.map(({ groupId }) => groupId);
  const paged: string[] = [];
  for (let before: number | undefined, more = true; more;) {
    const page = await wordsOf({ take: 3, ...(before === undefined ? {} : { before }) });
    paged.push(...page.acts.map(({ groupId }) => groupId));
    more = page.next !== null;
    before = page.next ?? undefined;
  }
  expect(paged).toEqual(all);
});
