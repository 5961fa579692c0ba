import 'server-only';
import { database } from '#lib/store/client';

/** A segment's place in the running order. */
export interface OrderedSegment {
  readonly id: string;
  readonly rev: number;
  readonly position: number;
}

/** The running order of an episode as stored: what moving a segment up or down exchanges. */
export function readSegmentOrder(episodeId: string): Promise<readonly OrderedSegment[]> {
  return database().segment.findMany({
    where: { episodeId, deletedAt: null },
    select: { id: true, rev: true, position: true },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
  });
}
