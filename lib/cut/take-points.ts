import type { PointsChange } from '#lib/cut/cut-points';

/** Where a segment is offered to stand; an offer by captions knows no end. */
export interface OfferedPoints {
  readonly id: string;
  readonly inFrame: number;
  readonly outFrame: number | null;
}

/**
 * In- and out-points with offers taken. Where an offer says no end, what ended at the old beginning of a segment ends
 * at its new one, and so does a neighbour above that had no end; an end that then lies before its beginning becomes
 * the next one's beginning, or is unknown again.
 *
 * Law: every segment that has both begins before it ends.
 *
 * @param points in running order
 * @example a 0–50, b 50–100, b offered at 60: a 0–60, b 60–100
 */
export function takePoints<T extends PointsChange>(
  points: readonly T[],
  offers: readonly OfferedPoints[],
): T[] {
  const offerOf = (id: string | undefined) => offers.find((one) => one.id === id);
  const begun = points.map((one) => {
    const offer = offerOf(one.id);
    return offer ? { ...one, inFrame: offer.inFrame } : one;
  });
  return begun.map((one, index) => {
    const offer = offerOf(one.id);
    const next = begun[index + 1];
    const nextOffered = offerOf(next?.id) !== undefined;
    if (one.inFrame === null || (!offer && !nextOffered)) return one;
    const after = later(one.inFrame);
    const shared = one.outFrame === null || one.outFrame === points[index + 1]?.inFrame;
    const nextIn = after(next?.inFrame ?? null);
    if (offer && offer.outFrame !== null)
      return { ...one, outFrame: after(offer.outFrame) ?? nextIn };
    if (nextOffered && shared) return { ...one, outFrame: nextIn };
    return { ...one, outFrame: after(one.outFrame) ?? nextIn };
  });
}

const later =
  (than: number) =>
  (frame: number | null): number | null =>
    frame !== null && frame > than ? frame : null;
