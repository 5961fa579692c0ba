import type { Weighing } from '#lib/episode/recipe-schema';
import type { WeighedOf, WeighingWay } from '#lib/episode/typed-weighing';

/** A reading of a scale as an entry of the day says it. */
export interface Weighed extends Pick<
  Weighing,
  'grossMg' | 'tareMg' | 'method' | 'scaleId' | 'afterId'
> {
  readonly recipeId: string;
  /** Null for the finished dish. */
  readonly lineId: string | null;
  /** A `container` waits for its second reading. */
  readonly of: Weighing['kind'];
  /** The reading that waited for this one and is a part of it; null for none. */
  readonly answersId: string | null;
  /** The photo of the display whose number this is; null where it was typed at once. */
  readonly photoId: string | null;
  /** When the display showed it, where that was photographed. */
  readonly readAt: string | null;
}

/** What is put on a scale, and how. */
export interface OnScale {
  readonly recipeId: string;
  /** Null for the finished dish. */
  readonly lineId: string | null;
  readonly of: WeighedOf;
  readonly way: WeighingWay;
  readonly scaleId: string;
  /** The container that comes off; 0 for none. */
  readonly containerMg: number;
}

/** A photo of what a scale showed. */
export interface Display extends OnScale {
  /** What was on the scale before, or waits for its second reading. */
  readonly beforeId: string | null;
  /** The name of the photo's bytes: SHA-256, as 64 hexadecimal digits. */
  readonly sha256: string;
}
