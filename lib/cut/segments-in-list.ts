import type { EditPiece } from '#lib/cut/edit-list';
import type { SoughtSegment } from '#lib/cut/find-segments';
import { plainWords } from '#lib/cut/plain-words';

/** Where a segment stands by an edit list, in frames of its rate; the out-point is the first frame after it. */
export interface SegmentInList {
  readonly id: string;
  readonly inFrame: number;
  readonly outFrame: number;
  /** Names of its clips, each once. */
  readonly clips: readonly string[];
}

export interface SegmentsInList {
  readonly segments: readonly SegmentInList[];
  /** Pieces whose clip names no segment, and that stand between no two clips of one. */
  readonly unknown: readonly EditPiece[];
}

/**
 * In- and out-points of segments by the clips of an edit list: a clip belongs to the segment whose title shares most
 * words with its name. Pieces between two clips of one segment belong to it too. A segment ends where the next begins.
 *
 * @param segments in running order
 * @param pieces in the order of the timeline
 * @example segmentsInList([{ id: 's1', title: 'Barley skillet', points: [] }], pieces).segments[0]?.inFrame // 1125
 */
export function segmentsInList(
  segments: readonly SoughtSegment[],
  pieces: readonly EditPiece[],
): SegmentsInList {
  const titles = segments.map(({ id, title }) => ({ id, words: new Set(plainWords(title)) }));
  const owners = pieces.map(({ name }) => ownerOf(plainWords(name), titles));
  const found = segments.flatMap(({ id }) => {
    const first = owners.indexOf(id);
    const last = owners.lastIndexOf(id);
    return first < 0 ? [] : [{ id, first, last }];
  });
  const taken = (index: number) => found.some(({ first, last }) => first <= index && index <= last);
  const result = found.flatMap(({ id, first, last }): SegmentInList[] => {
    const own = pieces.slice(first, last + 1);
    const [begin] = own;
    if (!begin) return [];
    const outFrame = own.reduce((most, { toFrame }) => Math.max(most, toFrame), begin.toFrame);
    return [{ id, inFrame: begin.fromFrame, outFrame, clips: namesOf(own) }];
  });
  return {
    segments: result.sort((a, b) => a.inFrame - b.inFrame),
    unknown: pieces.filter((_, index) => !taken(index)),
  };
}

function ownerOf(
  name: readonly string[],
  titles: readonly { readonly id: string; readonly words: ReadonlySet<string> }[],
): string | null {
  let best: { id: string; share: number } | null = null;
  for (const { id, words } of titles) {
    const shared = new Set(name.filter((word) => words.has(word))).size;
    const share = words.size === 0 ? 0 : shared / words.size;
    if (share > (best?.share ?? 0)) best = { id, share };
    // Two titles fit alike: neither is assumed.
    else if (best && share === best.share) best = { id: '', share };
  }
  return best === null || best.id === '' ? null : best.id;
}

function namesOf(pieces: readonly EditPiece[]): string[] {
  return [...new Set(pieces.map(({ name }) => name))];
}
