import type { EntityName, RowInput } from '#lib/store/rows';

export interface Create<E extends EntityName> {
  readonly op: 'create';
  readonly entity: E;
  readonly row: Readonly<RowInput<E>>;
}

/** Changes some columns of a row that still stands at revision `rev`. */
export interface Update<E extends EntityName> {
  readonly op: 'update';
  readonly entity: E;
  readonly id: string;
  readonly rev: number;
  readonly patch: Readonly<Partial<Omit<RowInput<E>, 'id'>>>;
}

/** Marks a row that still stands at revision `rev` as deleted; nothing is ever taken out of the file. */
export interface Remove {
  readonly op: 'remove';
  readonly entity: EntityName;
  readonly id: string;
  readonly rev: number;
}

/** Takes the deletion mark off again. */
export interface BringBack {
  readonly op: 'bringBack';
  readonly entity: EntityName;
  readonly id: string;
}

export type Edit = { [E in EntityName]: Create<E> | Update<E> }[EntityName] | Remove | BringBack;

/** One act of a person: all its edits are kept, or none. */
export interface Command {
  /** Who does it: a creator's id, or a program by name ("import"). */
  readonly actor: string;
  /** What is done, in a person's words; the journal and "undo" show it. */
  readonly label: string;
  readonly at: Date;
  /** Parents before children. A row is edited at most once. */
  readonly edits: readonly Edit[];
  /** Whose rows; the one person of this machine where it is not said. */
  readonly creatorId?: string;
}

export interface Written {
  /** Names the act in the journal. */
  readonly groupId: string;
  /** The new revision of each row that was touched, by its id. */
  readonly revs: Readonly<Record<string, number>>;
}
