import 'server-only';
import { failed, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Command, Edit, Written } from '#lib/store/command';
import { readJournalText } from '#lib/store/journal';
import { problemAt } from '#lib/store/refusals';
import { columnsOf, ENTITY_NAMES, type EntityName } from '#lib/store/rows';
import { write } from '#lib/store/write';

type Columns = Record<string, unknown>;
interface Span {
  readonly entity: EntityName;
  readonly id: string;
  readonly before: Columns | null;
  after: Columns | null;
}

/**
 * Takes back one act of the journal, as an act of its own (so it can be taken back too). A row that was
 * changed again since then refuses the whole, as any write does.
 */
export async function undo(
  groupId: string,
  by: Pick<Command, 'actor' | 'at' | 'creatorId'>,
): Promise<Result<Written>> {
  const changes = await database().change.findMany({
    where: { groupId },
    orderBy: { seq: 'asc' },
  });
  const spans = new Map<string, Span>();
  for (const change of changes) {
    const entity = ENTITY_NAMES.find((name) => name === change.entity);
    if (!entity) continue;
    const after = readJournalText(change.after);
    const span = spans.get(change.entityId);
    if (span) span.after = after;
    else {
      const before = readJournalText(change.before);
      spans.set(change.entityId, { entity, id: change.entityId, before, after });
    }
  }
  const edits = [...spans.values()].reverse().flatMap((span) => inverse(span));
  if (edits.length === 0) {
    return failed(problemAt('groupId', 'gone', 'There is nothing to undo here.', { groupId }));
  }
  return write({ ...by, label: `Undo: ${changes[0]?.label ?? ''}`, edits });
}

function inverse({ entity, id, before, after }: Span): Edit[] {
  const rev = typeof after?.rev === 'number' ? after.rev : 0;
  const wasThere = before !== null && before.deletedAt === null;
  const isThere = after !== null && after.deletedAt === null;
  if (!wasThere) return isThere ? [{ op: 'remove', entity, id, rev }] : [];
  if (!isThere) return [{ op: 'bringBack', entity, id }];
  const patch = Object.fromEntries(
    columnsOf(entity)
      .filter((name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]))
      .map((name) => [name, before[name]]),
  );
  return [{ op: 'update', entity, id, rev, patch } as Edit];
}
