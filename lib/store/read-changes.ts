import 'server-only';
import { database } from '#lib/store/client';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { readJournalText } from '#lib/store/journal';

/** One line of the journal: what an edit found and what it left. */
export interface JournalLine {
  readonly seq: number;
  readonly groupId: string;
  readonly at: Date;
  readonly actor: string;
  readonly label: string;
  readonly entity: string;
  readonly entityId: string;
  readonly before: Readonly<Record<string, unknown>> | null;
  readonly after: Readonly<Record<string, unknown>> | null;
}

export interface ChangesOf {
  /** Lines before this number: the last of the page before. */
  readonly before?: number;
  readonly take?: number;
  /** Lines of one row only. */
  readonly entityId?: string;
  /** Lines of one act only. */
  readonly groupId?: string;
}

/** The journal, the newest line first. */
export async function readChanges(
  { before, take = 50, entityId, groupId }: ChangesOf = {},
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly JournalLine[]> {
  const lines = await database().change.findMany({
    where: {
      creatorId,
      ...(before === undefined ? {} : { seq: { lt: before } }),
      ...(entityId === undefined ? {} : { entityId }),
      ...(groupId === undefined ? {} : { groupId }),
    },
    orderBy: { seq: 'desc' },
    take: Math.min(take, 500),
  });
  return lines.map((line) => ({
    ...line,
    before: readJournalText(line.before),
    after: readJournalText(line.after),
  }));
}
