import 'server-only';
import { v7 as uuid } from 'uuid';
import type { Create } from '#lib/store/command';

type Row = Create<'DayEvent'>['row'];

/** What a file tells of a day, as entries made by a device of their own, in the order given. */
export function filedEntries(
  dayId: string,
  entries: readonly {
    /** Of the entry itself; a new one where it says none. */
    readonly id?: string;
    readonly at: string;
    readonly kind: string;
    readonly payload: Row['payload'];
  }[],
): Create<'DayEvent'>[] {
  const deviceId = uuid();
  return entries.map(({ id = uuid(), at, kind, payload }, index) => ({
    op: 'create',
    entity: 'DayEvent',
    row: {
      ...{ id, dayId, deviceId, deviceSeq: index + 1, at: new Date(at) },
      ...{ kind, refs: {}, payload },
    },
  }));
}
