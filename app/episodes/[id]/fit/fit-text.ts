import { fitAskedSchema, type FitAsked } from '#lib/swap/fit-wish';

/** More than any form comes to. */
const LONGEST = 15_000;

/** What an address asks of a fit; null where it asks nothing that can be read. */
export function askedFrom(text: string | readonly string[] | undefined): FitAsked | null {
  if (typeof text !== 'string' || text === '' || text.length > LONGEST) return null;
  try {
    const read = fitAskedSchema.safeParse(JSON.parse(text));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** Address of a dish's fit, with what is asked. */
export function fitHref(episodeId: string, segmentId: string, asked: FitAsked | null = null) {
  const page = `/episodes/${episodeId}/fit/${segmentId}`;
  if (asked === null) return page;
  return `${page}?${new URLSearchParams({ asked: JSON.stringify(asked) }).toString()}#found`;
}
