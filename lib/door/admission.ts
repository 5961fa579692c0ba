import { isLoopbackHost, isOwnOrigin, readHost } from '#lib/door/host';

/** What is known of a request before anything is done for it. */
export interface Knock {
  /** It came through the phone's door: it carries the secret of this run. */
  readonly door: boolean;
  readonly host: string | null;
  readonly method: string;
  readonly path: string;
  readonly origin: string | null;
  /** The header Sec-Fetch-Site, which newer browsers send. */
  readonly fetchSite: string | null;
  /** It names a server action. */
  readonly action: boolean;
}

export type Admission =
  | { readonly kind: 'pass' }
  /** Only for a device that was let in. */
  | { readonly kind: 'session' }
  | { readonly kind: 'refuse'; readonly status: number; readonly words: string };

/** Where a device that is not let in yet sends its code. */
export const LET_IN = '/pair/let-in';
export const PAIR = '/pair';
export const AUTHORITY = '/authority.crt';

const SHOWN: ReadonlySet<string> = new Set([PAIR, AUTHORITY, '/icon.svg', '/favicon.ico']);

/** What is shown to anybody at the door, and holds nothing of the person's. */
function isPublic({ method, path, action }: Knock): boolean {
  if (action) return false;
  if (method === 'POST') return path === LET_IN;
  if (!isReading(method)) return false;
  return SHOWN.has(path) || path.startsWith('/_next/static/');
}

const isReading = (method: string) => method === 'GET' || method === 'HEAD';

/**
 * Whether a request may come in. On loopback its Host must be this machine's own name for itself; through
 * the door it needs a session, but for the few things that getting one takes. What changes something must
 * come from our own page, where the browser says from where.
 */
export function admission(knock: Knock): Admission {
  const { door, host, method, origin, fetchSite } = knock;
  if (host === null || readHost(host) === null || (!door && !isLoopbackHost(host))) {
    return refuse(
      421,
      'This address is not served here. Open http://127.0.0.1 with the port shown.',
    );
  }
  if (!isReading(method)) {
    const foreign = origin !== null && !isOwnOrigin(origin, host, door ? 'https' : 'http');
    if (foreign || fetchSite === 'cross-site' || fetchSite === 'same-site') {
      return refuse(403, 'This was sent by a page of another address, and was not done.');
    }
  }
  return door && !isPublic(knock) ? { kind: 'session' } : { kind: 'pass' };
}

function refuse(status: number, words: string): Admission {
  return { kind: 'refuse', status, words };
}
