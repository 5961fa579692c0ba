import { Prisma } from '#db/generated/sqlite/client';
import type { Problem } from '#lib/result';
import type { Tx } from '#lib/store/client';
import type { Command, Edit } from '#lib/store/command';
import type { JournalEntry } from '#lib/store/journal';
import { parentProblems, type Placing } from '#lib/store/parents';
import { conflictProblems, problemAt, zodProblems } from '#lib/store/refusals';
import {
  APPEND_ONLY,
  columnsOf,
  derivedColumns,
  LONG_COLUMNS,
  NULLABLE_JSON,
  ROWS,
} from '#lib/store/rows';
import type { EntityName } from '#lib/store/rows';
import { tableOf, type StoredRow } from '#lib/store/table';

/** An edit refused because the row was changed or removed meanwhile; what was typed is worth keeping. */
export interface RefusedTyping {
  readonly edit: Extract<Edit, { op: 'update' }>;
  readonly problems: readonly Problem[];
}

export interface Outcome {
  readonly entries: readonly JournalEntry[];
  readonly problems: readonly Problem[];
  readonly typing: readonly RefusedTyping[];
}

/** Rows written by one statement at most; the client cuts further where a database asks for it. */
const BATCH = 100;

/**
 * Carries out a command's edits inside a transaction and tells what the journal must hold.
 * With any problem the caller must roll back; the remaining edits are then only checked, so that a person
 * hears of every fault at once.
 */
export async function applyEdits(
  tx: Tx,
  command: Command,
  creatorId: string,
  creates: ReadonlyMap<Edit, StoredRow>,
): Promise<Outcome> {
  const entries: JournalEntry[] = [];
  const problems: Problem[] = await hangingProblems(tx, command, creates);
  const typing: RefusedTyping[] = [];
  let batch: StoredRow[] = [];
  let batchOf: EntityName | null = null;
  const flush = async () => {
    const entity = batchOf;
    if (entity && batch.length > 0 && problems.length === 0) {
      await tableOf(tx, entity).createMany({ data: batch.map((row) => forDatabase(entity, row)) });
    }
    batch = [];
    batchOf = null;
  };
  for (const [index, edit] of command.edits.entries()) {
    const created = creates.get(edit);
    if (created) {
      if (batchOf !== edit.entity || batch.length >= BATCH) await flush();
      batchOf = edit.entity;
      batch.push(created);
      entries.push({ entity: edit.entity, entityId: created.id, before: null, after: created });
      continue;
    }
    await flush();
    if (edit.op === 'create') continue;
    const path = `edits[${index}]`;
    const before = await tableOf(tx, edit.entity).findUnique({ where: { id: edit.id } });
    const refused = refusal(edit, before, creatorId, path);
    if (before === null || refused.length > 0) {
      problems.push(...refused);
      const meanwhile = refused.some((p) => p.code === 'conflict' || p.code === 'gone');
      if (edit.op === 'update' && meanwhile) typing.push({ edit, problems: refused });
      continue;
    }
    const data = changedColumns(edit, before, command.at, path);
    if (data.problems) {
      problems.push(...data.problems);
      continue;
    }
    const after = { ...before, ...data.columns, rev: before.rev + 1 };
    if (problems.length === 0) {
      const { count } = await tableOf(tx, edit.entity).updateMany({
        where: { id: edit.id, rev: before.rev },
        data: forDatabase(edit.entity, { ...data.columns, rev: after.rev }),
      });
      if (count !== 1) throw new Error(`${edit.entity} ${edit.id} changed inside a transaction`);
    }
    entries.push({ entity: edit.entity, entityId: edit.id, before, after });
  }
  await flush();
  return { entries, problems, typing };
}

/** The problems of rows that are made, brought back or moved under something that was removed. */
async function hangingProblems(
  tx: Tx,
  { edits }: Command,
  creates: ReadonlyMap<Edit, StoredRow>,
): Promise<Problem[]> {
  const arriving = new Set<string>();
  const placings: Placing[] = [];
  for (const [index, edit] of edits.entries()) {
    const path = `edits[${index}]`;
    const created = creates.get(edit);
    if (created) placings.push({ path, entity: edit.entity, columns: created });
    if (created) arriving.add(created.id);
    if (edit.op === 'update') placings.push({ path, entity: edit.entity, columns: edit.patch });
    if (edit.op !== 'bringBack') continue;
    arriving.add(edit.id);
    const row = await tableOf(tx, edit.entity).findUnique({ where: { id: edit.id } });
    if (row) placings.push({ path, entity: edit.entity, columns: row });
  }
  return parentProblems(tx, placings, arriving);
}

/** Why an edit may not touch the row as it stands; empty where it may. */
function refusal(
  edit: Exclude<Edit, { op: 'create' }>,
  before: StoredRow | null,
  creatorId: string,
  path: string,
): Problem[] {
  const facts = { entity: edit.entity, id: edit.id };
  if (before === null || (edit.op !== 'bringBack' && before.deletedAt !== null)) {
    return [
      problemAt(path, 'gone', `This ${edit.entity} is no longer there: it was removed.`, facts),
    ];
  }
  if (before.creatorId !== creatorId) {
    const words = `This ${edit.entity} belongs to a published table and cannot be changed; add one of your own.`;
    return [problemAt(path, 'not-yours', words, facts)];
  }
  if (edit.op === 'update' && APPEND_ONLY.has(edit.entity)) {
    const words = `A ${edit.entity} is written once: strike it out and write a new one.`;
    return [problemAt(path, 'append-only', words, facts)];
  }
  if (edit.op === 'update') {
    const { entity, patch }: { entity: EntityName; patch: Readonly<Columns> } = edit;
    const long = LONG_COLUMNS[entity]?.find(
      (name) => patch[name] !== undefined && patch[name] !== before[name],
    );
    if (long !== undefined) {
      const words = `The ${long} of ${entity} never changes: take it out and put in another.`;
      return [problemAt(`${path}.patch.${long}`, 'append-only', words, facts)];
    }
  }
  if (edit.op === 'bringBack') {
    return before.deletedAt === null
      ? [problemAt(path, 'not-removed', `This ${edit.entity} was not removed.`, facts)]
      : [];
  }
  if (edit.rev !== before.rev) return conflictProblems(edit, before, path);
  return [];
}

type Columns = Record<string, unknown>;

/** The columns that an edit changes, checked together with those it leaves. */
function changedColumns(
  edit: Exclude<Edit, { op: 'create' }>,
  before: StoredRow,
  at: Date,
  path: string,
): { columns: Columns; problems?: undefined } | { problems: Problem[] } {
  if (edit.op === 'remove') return { columns: { deletedAt: at } };
  if (edit.op === 'bringBack') return { columns: { deletedAt: null } };
  const patch = Object.fromEntries(
    Object.entries(edit.patch).filter(([, value]) => value !== undefined),
  );
  const whole: Columns = { ...pick(before, columnsOf(edit.entity)), ...patch };
  if (whole.id !== before.id) {
    return { problems: [problemAt(`${path}.patch.id`, 'invalid', 'An id never changes.')] };
  }
  const parsed = ROWS[edit.entity].safeParse(whole);
  if (!parsed.success) return { problems: zodProblems(parsed.error, `${path}.patch`) };
  const columns = pick(parsed.data, Object.keys(patch));
  return { columns: { ...columns, ...derivedColumns(edit.entity, columns) } };
}

function pick(row: Readonly<Columns>, names: readonly string[]): Columns {
  return Object.fromEntries(names.map((name) => [name, row[name]]));
}

/** The client tells a missing JSON value from the JSON value null, and wants to hear which is meant. */
function forDatabase(entity: EntityName, row: Readonly<Columns>): Columns {
  const copy = { ...row };
  for (const name of NULLABLE_JSON[entity] ?? []) {
    if (copy[name] === null) copy[name] = Prisma.DbNull;
  }
  return copy;
}
