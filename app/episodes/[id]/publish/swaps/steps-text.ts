import { z } from 'zod';
import { swapStepSchema, type SwapStep } from '#lib/episode/publish-schema';

/** Steps that a page tries out stand in its address; more than these are no swap that anybody could say. */
const MOST_STEPS = 100;
/** More than a hundred steps with their ids come to. */
const LONGEST = 20_000;

const steps = z.array(swapStepSchema).max(MOST_STEPS);

/** Steps as an address or a hidden field holds them; none where it holds something else. */
export function stepsFrom(text: string | readonly string[] | undefined): readonly SwapStep[] {
  if (typeof text !== 'string' || text === '' || text.length > LONGEST) return [];
  try {
    const read = steps.safeParse(JSON.parse(text));
    return read.success ? read.data : [];
  } catch {
    return [];
  }
}

/** Steps as `stepsFrom` reads them. */
export function stepsText(all: readonly SwapStep[]): string {
  return JSON.stringify(all);
}

/** What is open on the page of a dish's swaps. */
export interface SwapPlace {
  readonly steps?: readonly SwapStep[];
  /** The saved swap that is being changed. */
  readonly variantId?: string | null;
  /** The ingredient whose ways stand open; `add` for another food. */
  readonly line?: string | null;
  /** Whether it leads to what the swap does, where none stands open. */
  readonly told?: boolean;
}

/** Address of a dish's swaps, with what is tried out. */
export function dishSwapsHref(
  episodeId: string,
  segmentId: string,
  { steps: tried = [], variantId = null, line = null, told = false }: SwapPlace = {},
): string {
  const asked = new URLSearchParams();
  if (variantId !== null) asked.set('variant', variantId);
  if (tried.length > 0 || variantId !== null) asked.set('steps', stepsText(tried));
  if (line !== null) asked.set('line', line);
  const query = asked.toString();
  const at = line === null ? (told ? '#told' : '') : `#line-${encodeURIComponent(line)}`;
  return `${swapsHref(episodeId)}/${segmentId}${query ? `?${query}` : ''}${at}`;
}

/** Address of all saved swaps of an episode. */
export function swapsHref(episodeId: string): string {
  return `/episodes/${episodeId}/publish/swaps`;
}
