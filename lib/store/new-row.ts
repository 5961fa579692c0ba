import type { Edit } from '#lib/store/command';
import type { EntityName, RowInput } from '#lib/store/rows';

/** One new row. */
export function create<E extends EntityName>(entity: E, row: RowInput<E>): Edit {
  return { op: 'create', entity, row } as unknown as Edit;
}
