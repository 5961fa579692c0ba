import 'server-only';
import { v7 as uuid } from 'uuid';
import { Prisma } from '#db/generated/sqlite/client';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { applyEdits, type Outcome, type RefusedTyping } from '#lib/store/apply-edits';
import { inTransaction, type Tx } from '#lib/store/client';
import type { Command, Edit, Written } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { crowdProblems } from '#lib/store/crowded';
import { inLine } from '#lib/store/in-line';
import { journalText, type JournalEntry } from '#lib/store/journal';
import { mergeRingProblems } from '#lib/store/merge-rings';
import { ringProblems } from '#lib/store/recipe-rings';
import { problemAt, zodProblems } from '#lib/store/refusals';
import { derivedColumns, ROWS } from '#lib/store/rows';
import type { StoredRow } from '#lib/store/table';

/**
 * The only way to change anything in the store. All edits of a command are kept, or none: a fault in one,
 * or a row that was changed elsewhere since it was read (code `conflict`, with both texts), refuses the
 * whole. What was typed and refused so is kept as a Draft, whose id is in the facts. Each edit leaves one
 * Change in the journal, written in the same transaction.
 */
export async function write(command: Command): Promise<Result<Written>> {
  const creatorId = command.creatorId ?? DEFAULT_CREATOR_ID;
  const checked = checkCreates(command, creatorId);
  if (!checked.ok) return checked;
  const groupId = uuid();
  try {
    // One person's acts in the order given; a database of many writers would refuse the one overtaken.
    return ok(
      await inLine(creatorId, () =>
        inTransaction((tx) => run(tx, command, creatorId, groupId, checked.value)),
      ),
    );
  } catch (error) {
    if (error instanceof Refused) {
      return failed(...(await keepTyping(error.outcome, command, creatorId)));
    }
    const known = constraintProblem(error);
    if (known) return failed(known);
    throw error;
  }
}

/** Carries the reasons out of a transaction that must roll back. */
class Refused extends Error {
  constructor(readonly outcome: Outcome) {
    super('The command was refused');
  }
}

async function run(
  tx: Tx,
  command: Command,
  creatorId: string,
  groupId: string,
  creates: ReadonlyMap<Edit, StoredRow>,
): Promise<Written> {
  const outcome = await applyEdits(tx, command, creatorId, creates);
  if (outcome.problems.length > 0) throw new Refused(outcome);
  const problems = [
    ...(await ringProblems(tx, outcome.entries)),
    ...(await mergeRingProblems(tx, outcome.entries)),
    ...(await crowdProblems(tx, outcome.entries)),
  ];
  if (problems.length > 0) throw new Refused({ ...outcome, problems });
  await writeJournal(tx, command, creatorId, groupId, outcome.entries);
  const revs = outcome.entries.map((entry) => [entry.entityId, entry.after?.rev ?? 0] as const);
  return { groupId, revs: Object.fromEntries(revs) };
}

/** Lines written by one statement at most: each holds a row twice, and a statement has to stay of a size. */
const BATCH = 50;

/** Adds the lines of a group to the journal, in order. */
export async function writeJournal(
  tx: Tx,
  command: Pick<Command, 'actor' | 'label' | 'at'>,
  creatorId: string,
  groupId: string,
  entries: readonly JournalEntry[],
): Promise<void> {
  const { actor, label, at } = command;
  const data = entries.map(({ entity, entityId, before, after }) => ({
    groupId,
    creatorId,
    at,
    actor,
    label,
    entity,
    entityId,
    before: journalText(entity, before),
    after: journalText(entity, after),
  }));
  for (let from = 0; from < data.length; from += BATCH) {
    await tx.change.createMany({ data: data.slice(from, from + BATCH) });
  }
}

/** Checks the rows to be created before anything is locked, and that no row is edited twice. */
function checkCreates(command: Command, creatorId: string): Result<Map<Edit, StoredRow>> {
  const rows = new Map<Edit, StoredRow>();
  const problems: Problem[] = [];
  const seen = new Set<string>();
  for (const [index, edit] of command.edits.entries()) {
    const path = `edits[${index}]`;
    const given = edit.op === 'create' ? edit.row : edit.op === 'update' ? edit.patch : {};
    const rowId = edit.op === 'create' ? edit.row.id : edit.id;
    if (seen.has(rowId)) {
      problems.push(problemAt(path, 'edited-twice', `${edit.entity} ${rowId} stands twice here.`));
    }
    seen.add(rowId);
    if (isUnstorable(given)) {
      problems.push(problemAt(path, 'invalid', 'Text holds a character that cannot be stored.'));
    }
    if (edit.op !== 'create') continue;
    const parsed = ROWS[edit.entity].safeParse(edit.row);
    if (parsed.success) {
      const common = { creatorId, rev: 1, deletedAt: null };
      const derived = derivedColumns(edit.entity, parsed.data);
      rows.set(edit, { ...parsed.data, ...derived, ...common });
    } else {
      problems.push(...zodProblems(parsed.error, `${path}.row`));
    }
  }
  return problems.length > 0 ? failed(...problems) : ok(rows);
}

/** PostgreSQL keeps no NUL in text, and no database half of a pair of surrogates (RFC 3629, 3). */
function isUnstorable(value: unknown): boolean {
  if (typeof value === 'string') return /\0|\p{Surrogate}/u.test(value);
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return false;
  return Object.entries(value).some(([key, part]) => isUnstorable(key) || isUnstorable(part));
}

/** What the database itself refuses: a row that points at nothing, an id or a device's number used twice. */
function constraintProblem(error: unknown): Problem | null {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return null;
  if (error.code === 'P2003') {
    return problemAt('edits', 'missing-row', 'Something here points at a row that does not exist.');
  }
  if (error.code === 'P2002') {
    return problemAt('edits', 'exists-already', 'Something here was written before.');
  }
  return null;
}

/** Keeps what was typed as drafts, in a group of their own, and names them in the problems. */
async function keepTyping(
  outcome: Outcome,
  command: Command,
  creatorId: string,
): Promise<readonly Problem[]> {
  if (outcome.typing.length === 0) return outcome.problems;
  const drafts = outcome.typing.map((refused) => ({ refused, id: uuid() }));
  const edits = drafts.map(({ refused, id }) => draftEdit(refused, id, command.at));
  const kept = await write({ ...command, edits, creatorId });
  if (!kept.ok) return [...outcome.problems, ...kept.problems];
  const draftOf = new Map(
    drafts.flatMap(({ refused, id }) => refused.problems.map((problem) => [problem, id] as const)),
  );
  return outcome.problems.map((problem) => {
    const draftId = draftOf.get(problem);
    return draftId ? { ...problem, facts: { ...problem.facts, draftId } } : problem;
  });
}

function draftEdit({ edit }: RefusedTyping, id: string, at: Date): Edit {
  const payload = JSON.stringify(edit.patch);
  const { entity, id: entityId, rev: baseRev } = edit;
  return { op: 'create', entity: 'Draft', row: { id, entity, entityId, baseRev, payload, at } };
}
