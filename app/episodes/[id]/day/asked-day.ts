/** The parts of a query that ask for one of an episode's filming days. */
export interface AskedDay {
  readonly day?: string | string[] | undefined;
}

/** The filming day that an address asks for; undefined where it asks for none. */
export function askedDay({ day }: AskedDay): string | undefined {
  return typeof day === 'string' && day !== '' ? day : undefined;
}

/** The same of a request for a file. */
export function dayOfRequest(request: Request): string | undefined {
  return new URL(request.url).searchParams.get('day') || undefined;
}

/** An address that shows a day; without one, the day that is next. `withDay('/x?at=1', 'd')` → `'/x?at=1&day=d'` */
export function withDay(path: string, dayId: string | null | undefined): string {
  if (!dayId) return path;
  const [plain = '', anchor] = path.split('#');
  const joined = `${plain}${plain.includes('?') ? '&' : '?'}day=${encodeURIComponent(dayId)}`;
  return anchor === undefined ? joined : `${joined}#${anchor}`;
}
