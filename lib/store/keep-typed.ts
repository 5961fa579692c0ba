import 'server-only';
import { v7 as uuid } from 'uuid';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { database } from '#lib/store/client';
import { readDrafts } from '#lib/store/read-drafts';
import type { EntityName } from '#lib/store/rows';
import { tableOf } from '#lib/store/table';
import { write } from '#lib/store/write';

/** Letters of one refused form at most; a longer one is kept by its page alone. */
const LONGEST = 40_000;

type Texts = Readonly<Record<string, string>>;

/** The texts of a form that was refused, as the store kept them. */
export interface KeptTexts {
  readonly id: string;
  readonly rev: number;
  readonly at: Date;
  readonly texts: Texts;
}

/** Keeps the texts of a refused form of a row: one draft for each row, the last typed. */
export async function keepTyped(
  entity: EntityName,
  entityId: string,
  texts: Texts,
  at: Date,
): Promise<void> {
  const payload = JSON.stringify({ texts });
  if (payload.length > LONGEST) return;
  const row = await tableOf(database(), entity).findUnique({ where: { id: entityId } });
  if (!row) return;
  const [last, ...older] = await readDrafts(entityId);
  const baseRev = /^\d{1,9}$/.test(texts.rev ?? '') ? Number(texts.rev) : row.rev;
  const kept: Edit = last
    ? { op: 'update', entity: 'Draft', id: last.id, rev: last.rev, patch: { payload, baseRev, at } }
    : {
        op: 'create',
        entity: 'Draft',
        row: { id: uuid(), entity, entityId, baseRev, payload, at },
      };
  const away = older.map(({ id, rev }): Edit => ({ op: 'remove', entity: 'Draft', id, rev }));
  const label = 'Keep what was typed';
  // A draft that cannot be kept must not hide why the form was refused.
  await write({ actor: DEFAULT_CREATOR_ID, label, at, edits: [kept, ...away] });
}

/** What was typed into a row's form and refused; null where nothing waits. */
export async function readKeptTexts(entityId: string): Promise<KeptTexts | null> {
  for (const { id, rev, at, typed } of await readDrafts(entityId)) {
    const { texts } = typed;
    if (typeof texts === 'object' && texts !== null) return { id, rev, at, texts: texts as Texts };
  }
  return null;
}

/** Puts the drafts of a row away: they were used, or are not wanted. */
export async function dropTyped(entityId: string, at: Date): Promise<void> {
  const drafts = await readDrafts(entityId);
  if (drafts.length === 0) return;
  const edits = drafts.map(({ id, rev }): Edit => ({ op: 'remove', entity: 'Draft', id, rev }));
  await write({ actor: DEFAULT_CREATOR_ID, label: 'Put away what was typed', at, edits });
}
