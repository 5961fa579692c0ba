import 'server-only';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { ALIVE } from '#lib/store/load';

/** What was typed into a row and refused because the row had changed; removed once it is dealt with. */
export interface KeptDraft {
  readonly id: string;
  readonly rev: number;
  readonly entity: string;
  readonly entityId: string;
  readonly baseRev: number;
  readonly typed: Readonly<Record<string, unknown>>;
  readonly at: Date;
}

/** The drafts of one row, the newest first. */
export async function readDrafts(
  entityId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly KeptDraft[]> {
  const drafts = await database().draft.findMany({
    where: { creatorId, ...ALIVE, entityId },
    orderBy: { id: 'desc' },
    take: 100,
  });
  return drafts.map(({ payload, ...draft }) => ({
    ...draft,
    typed: JSON.parse(payload) as Record<string, unknown>,
  }));
}
