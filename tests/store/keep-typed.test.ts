import { describe, expect, it } from 'vitest';
import { database } from '#lib/store/client';
import { dropTyped, keepTyped, readKeptTexts } from '#lib/store/keep-typed';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';

withFreshDatabase();

async function episode(id: string): Promise<void> {
  const row = {
    id,
    title: 'Quay day',
    hook: '',
    region: 'US' as const,
    publishOn: null,
    rateNum: 25,
    rateDen: 1,
    anythingElseKind: null,
    anythingElseWhat: null,
    disclosure: '',
    kitchenId: null,
  };
  const edits = [{ op: 'create' as const, entity: 'Episode' as const, row }];
  const done = await write({ actor: 'me', label: 'New', at: AT, edits });
  expect(done.ok).toBe(true);
}
const living = (entityId: string) =>
  database().draft.count({ where: { entityId, deletedAt: null } });

describe('typing that was refused', () => {
  it('is kept once for each row, the last typed, and put away when it was used', async () => {
    await episode('e1');
    await keepTyped('Episode', 'e1', { title: '½½', rev: '1' }, AT);
    await keepTyped('Episode', 'e1', { title: '🍋 x', rev: '1' }, AT);
    expect(await living('e1')).toBe(1);
    expect((await readKeptTexts('e1'))?.texts).toEqual({ title: '🍋 x', rev: '1' });
    await dropTyped('e1', AT);
    expect(await living('e1')).toBe(0);
    expect(await readKeptTexts('e1')).toBeNull();
    // The journal has both still.
    const lines = await database().change.findMany({ where: { entity: 'Draft' } });
    expect(lines.map(({ after }) => after).join()).toContain('½½');
  });

  it('takes over what the store kept of a conflict, so that it is offered once', async () => {
    await episode('e2');
    const patch = (title: string) =>
      ({ op: 'update', entity: 'Episode', id: 'e2', rev: 1, patch: { title } }) as const;
    const act = (title: string) =>
      write({ actor: 'me', label: 'Rename', at: AT, edits: [patch(title)] });
    expect((await act('theirs')).ok).toBe(true);
    expect((await act('mine')).ok).toBe(false);
    expect(await living('e2')).toBe(1);
    // Columns of a row are no texts of a form.
    expect(await readKeptTexts('e2')).toBeNull();
    await keepTyped('Episode', 'e2', { title: 'mine', rev: '1' }, AT);
    expect(await living('e2')).toBe(1);
    expect((await readKeptTexts('e2'))?.texts.title).toBe('mine');
  });

  it('of a row that is not there, or longer than any form, is not written', async () => {
    await keepTyped('Episode', 'nowhere', { title: 'x' }, AT);
    expect(await living('nowhere')).toBe(0);
    await episode('e3');
    await keepTyped('Episode', 'e3', { title: 'x'.repeat(50_000) }, AT);
    expect(await living('e3')).toBe(0);
  });
});
