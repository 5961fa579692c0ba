import { v7 as uuid } from 'uuid';
import type { Problem } from '#lib/result';

/** What an id of a file names; ids are local to the file and to their kind. */
export type Kind =
  | 'food'
  | 'version'
  | 'oven'
  | 'appliance'
  | 'scale'
  | 'shop'
  | 'segment'
  | 'step'
  | 'line'
  | 'portion'
  | 'text'
  | 'talkingPoint'
  | 'recipe';

/** What an id of a row looks like. */
const ROW_ID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** From the local names of a file to the ids of rows. */
export class ImportIds {
  readonly problems: Problem[] = [];
  readonly #known = new Map<string, string>();

  /**
   * @param ofRows true where the local names are ids of this store: a copied dish then names its original
   * @param keep true where rows get the very ids that the file names, so that locks which name them hold; nothing that
   * is there under another id is then taken in place of what the file brings
   */
  constructor(
    readonly ofRows = false,
    readonly keep = false,
  ) {}

  /** The id of a new row for what a file names: that very name where ids are kept and it can be one. */
  fresh(local: string): string {
    return this.keep && ROW_ID.test(local) ? local : uuid();
  }

  /** Whether a row that is there with equal data may stand for what the file names. */
  mayUse(local: string, rowId: string): boolean {
    return !this.keep || local === rowId;
  }

  /** Says that a local name means a row that is there already. */
  use(kind: Kind, local: string, id: string): void {
    this.#known.set(`${kind} ${local}`, id);
  }

  /** The row that a local name means, if anything has it yet. */
  known(kind: Kind, local: string): string | undefined {
    return this.#known.get(`${kind} ${local}`);
  }

  /** A new id for a local name, in the order of asking; the one it has where it was asked for before. */
  mint(kind: Kind, local: string): string {
    const id = this.known(kind, local) ?? this.fresh(local);
    this.use(kind, local, id);
    return id;
  }

  /** The row that a local name means; a name that nothing has is a problem of the file. */
  of(kind: Kind, local: string, path: string): string {
    const id = this.#known.get(`${kind} ${local}`);
    if (id !== undefined) return id;
    const message = `no ${kind} in this file has the id "${local}"`;
    this.problems.push({ path, code: 'unknown-id', message, facts: { id: local } });
    return local;
  }
}
