import { episodeScope, spanScope, type ListScope } from '#lib/shopping/list-events';

/** Which list an address asks for: the episode's, or that of all episodes filmed between two dates. */
export interface AskedList {
  readonly scope: ListScope;
  /** The dates of a span, the first first; null for the episode alone. */
  readonly span: { readonly from: string; readonly to: string } | null;
  /** What is wrong with the dates that were asked for; null where nothing is. */
  readonly fault: string | null;
}

/** The list of `?from=…&to=…`; that of the episode without them, and where they are none. */
export function askedList(episodeId: string, query: URLSearchParams): AskedList {
  const [from, to] = [query.get('from') ?? '', query.get('to') ?? ''];
  const alone = { scope: episodeScope(episodeId), span: null };
  if (from === '' && to === '') return { ...alone, fault: null };
  if (!isDate(from) || !isDate(to)) {
    return { ...alone, fault: 'Choose both dates, the first and the last filming day.' };
  }
  if (from > to) return { ...alone, fault: 'The last filming day comes before the first.' };
  return { scope: spanScope(from, to), span: { from, to }, fault: null };
}

function isDate(text: string): boolean {
  return /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(Date.parse(`${text}T00:00:00Z`));
}

/** What an address has behind it for a list: `?from=…&to=…`, or nothing. */
export function listQuery({ span }: Pick<AskedList, 'span'>): string {
  return span ? `?${new URLSearchParams({ from: span.from, to: span.to }).toString()}` : '';
}
