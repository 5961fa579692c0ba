import 'server-only';
import { failed, type Problem, type Result } from '#lib/result';
import { database } from '#lib/store/client';
import type { Command, Edit, Written } from '#lib/store/command';
import { journalText, readJournalText } from '#lib/store/journal';
import { problemAt } from '#lib/store/refusals';
import { referring } from '#lib/store/remove-rows';
import { columnsOf, ENTITY_NAMES, type EntityName } from '#lib/store/rows';
import { dataText } from '#lib/store/same-data';
import { tableOf, type StoredRow } from '#lib/store/table';
import { write } from '#lib/store/write';

type Columns = Record<string, unknown>;

/** What an act did to one row, first and last, and how the row stands now. */
interface Span {
  readonly entity: EntityName;
  readonly id: string;
  readonly before: Columns | null;
  after: Columns | null;
}
interface Standing extends Span {
  readonly row: StoredRow | null;
  readonly now: Columns | null;
}

/**
 * Takes back one act of the journal, as an act of its own (so it can be taken back too). Columns that the act
 * did not touch may have changed since; where one that it did touch has, or where a row that it made has been
 * built upon, nothing is written, and the problem (code `conflict`) names what to undo first.
 */
export async function undo(
  groupId: string,
  by: Pick<Command, 'actor' | 'at' | 'creatorId'>,
): Promise<Result<Written>> {
  const changes = await database().change.findMany({
    where: { groupId },
    orderBy: { seq: 'asc' },
  });
  const spans = await Promise.all([...spansOf(changes).values()].map(standing));
  const inverses = spans.reverse().map((span) => ({ span, ...inverse(span) }));
  const overlaid = inverses.filter(({ later }) => later).map(({ span }) => span.id);
  const leaving = inverses.filter(({ edit }) => edit?.op === 'remove').map(({ span }) => span);
  const resting = await restingOn(leaving, new Set(spans.map(({ id }) => id)));
  const lastSeq = changes.at(-1)?.seq ?? 0;
  const first = await laterActs([...overlaid, ...resting], lastSeq, groupId);
  if (first) return failed(first);
  const edits = inverses.flatMap(({ edit }) => edit ?? []);
  if (edits.length === 0) {
    const words =
      changes.length > 0 ? 'This was undone already.' : 'There is nothing to undo here.';
    return failed(problemAt('groupId', 'gone', words, { groupId }));
  }
  return write({ ...by, label: undoLabel(changes[0]?.label ?? ''), edits });
}

/** What the journal calls the taking back of an act: `'Undo: Add salt'`, and of that `'Redo: Add salt'`. */
function undoLabel(label: string): string {
  const [, word, rest] = /^(Undo|Redo): (.*)$/s.exec(label) ?? [];
  return word === 'Undo' ? `Redo: ${rest}` : `Undo: ${rest ?? label}`;
}

function spansOf(
  changes: readonly {
    readonly entity: string;
    readonly entityId: string;
    readonly before: string | null;
    readonly after: string | null;
  }[],
): Map<string, Span> {
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
  return spans;
}

async function standing(span: Span): Promise<Standing> {
  const row = await tableOf(database(), span.entity).findUnique({ where: { id: span.id } });
  return { ...span, row, now: readJournalText(journalText(span.entity, row)) };
}

const isThere = (row: Columns | null) => row !== null && row.deletedAt === null;
/** Keys of JSON have no order: the journal has them as they were given, a database perhaps in its own. */
const same = (a: unknown, b: unknown) => dataText(a, []) === dataText(b, []);

/** The edit that takes a span back; `later` where the row has been changed since in what the span touched. */
function inverse(span: Standing): { readonly edit: Edit | null; readonly later: boolean } {
  const { entity, id, before, after, row, now } = span;
  if (row === null) return { edit: null, later: false };
  const { rev } = row;
  const columns = columnsOf(entity);
  if (!isThere(before)) {
    if (!isThere(after) || !isThere(now)) return { edit: null, later: false };
    const later = columns.some((name) => !same(after?.[name], now?.[name]));
    return { edit: { op: 'remove', entity, id, rev }, later };
  }
  if (!isThere(after)) {
    if (isThere(now)) return { edit: null, later: false };
    return { edit: { op: 'bringBack', entity, id }, later: after?.rev !== rev };
  }
  const touched = columns.filter((name) => !same(before?.[name], after?.[name]));
  if (!isThere(now)) return { edit: null, later: touched.length > 0 };
  if (touched.every((name) => same(before?.[name], now?.[name])))
    return { edit: null, later: false };
  const patch = Object.fromEntries(touched.map((name) => [name, before?.[name]]));
  const later = touched.some((name) => !same(after?.[name], now?.[name]));
  return { edit: { op: 'update', entity, id, rev, patch } as Edit, later };
}

/** Living rows that were put under those about to leave, and do not leave with them. */
async function restingOn(
  leaving: readonly Standing[],
  undone: ReadonlySet<string>,
): Promise<string[]> {
  const rows = leaving.flatMap(({ entity, row }) => (row ? [{ entity, row }] : []));
  const found = await referring(database(), rows);
  return found.map(({ going }) => going.row.id).filter((id) => !undone.has(id));
}

/** Acts named in the refusal at most. */
const NAMED = 3;

/** The refusal that names the later acts on these rows, the newest first; null where there is none. */
async function laterActs(
  ids: readonly string[],
  after: number,
  groupId: string,
): Promise<Problem | null> {
  if (ids.length === 0) return null;
  const lines = await database().change.findMany({
    where: { entityId: { in: [...new Set(ids)] }, seq: { gt: after }, groupId: { not: groupId } },
    orderBy: { seq: 'desc' },
    select: { groupId: true, label: true },
  });
  const acts = new Map(lines.map((line) => [line.groupId, line.label]));
  const labels = [...acts.values()];
  const named = labels.slice(0, NAMED).map((label) => `“${label}”`);
  const more = labels.length > NAMED ? ` and ${labels.length - NAMED} more` : '';
  const words =
    named.length === 0
      ? 'Something else rests on this now: take that out first.'
      : `Later changes rest on this. Undo first: ${named.join(', then ')}${more}.`;
  const laterGroupId = [...acts.keys()][0] ?? null;
  return problemAt('groupId', 'conflict', words, { groupId, laterGroupId });
}
