import { mendPlace } from '#lib/episode/edit-schema';
import type { Tx } from '#lib/store/client';
import { ALIVE, BY_ID, BY_POSITION } from '#lib/store/load';

/** How much of the edit is read: nothing, ids and revisions of its rows, or all of it with its texts. */
export type EditRead = 'none' | 'revisions' | 'all';

/** The rows of an episode's edit; null where they are not wanted. */
export async function loadEdit(tx: Tx, episodeId: string, read: EditRead) {
  if (read !== 'all') return null;
  return {
    texts: await tx.editText.findMany({ ...BY_POSITION, where: { episodeId, ...ALIVE } }),
    mends: await tx.readingMend.findMany({ ...BY_ID, where: { episodeId, ...ALIVE } }),
    named: await tx.namedFood.findMany({ ...BY_ID, where: { episodeId, ...ALIVE } }),
  };
}
type EditTree = NonNullable<Awaited<ReturnType<typeof loadEdit>>>;

/** Ids and revisions of an edit's rows, without their texts. */
export async function loadEditRevisions(tx: Tx, episodeId: string, read: EditRead) {
  if (read !== 'revisions') return null;
  const of = { where: { episodeId, ...ALIVE }, select: { id: true, rev: true } };
  return {
    texts: await tx.editText.findMany(of),
    mends: await tx.readingMend.findMany(of),
    named: await tx.namedFood.findMany(of),
  };
}

/** A segment with the portions of its dish and its talking points, as far as a reading put right may name them. */
interface Nameable {
  readonly id: string;
  readonly portions: readonly { readonly id: string }[];
  readonly talkingPoints: readonly { readonly id: string }[];
}

/**
 * The edit as plain data, still to be checked by its schema; undefined where there is none. Of words put right twice,
 * and of a food answered twice, the newest stands. A number said to be of a dish or portion that was taken out, or in
 * a text that was, is of nothing: such a row is left out, and stands again when that is brought back.
 */
export function editFrom({ texts, mends, named }: EditTree, segments: readonly Nameable[]) {
  const said = new Set(
    [...texts, ...segments.flatMap(({ talkingPoints }) => talkingPoints)].map(({ id }) => id),
  );
  const standing = mends.filter(
    (mend) => namesWhatIsThere(mend, segments) && (mend.textId === null || said.has(mend.textId)),
  );
  const edit = {
    texts,
    mends: newest(standing, mendPlace).map(({ id, textId, words, before, after, ...mend }) => ({
      id,
      textId,
      words,
      before,
      after,
      mend: mendFrom(mend),
    })),
    named: newest(named, ({ food }) => food),
  };
  return edit.texts.length + edit.mends.length + edit.named.length === 0 ? undefined : edit;
}

type MendRow = EditTree['mends'][number];

function mendFrom({ kind, heard, segmentId, portionId, scope }: Partial<MendRow>) {
  return { kind, text: heard, segmentId, portionId, scope };
}

function namesWhatIsThere({ segmentId, portionId }: MendRow, segments: readonly Nameable[]) {
  if (segmentId === null) return true;
  const segment = segments.find(({ id }) => id === segmentId);
  if (!segment) return false;
  return portionId === null || segment.portions.some(({ id }) => id === portionId);
}

/** The last of those with one key, each where its last stands. */
function newest<T>(rows: readonly T[], keyOf: (row: T) => string): readonly T[] {
  const last = new Map(rows.map((row) => [keyOf(row), row]));
  return rows.filter((row) => last.get(keyOf(row)) === row);
}
