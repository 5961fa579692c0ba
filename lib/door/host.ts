/** A Host header taken apart; an IPv6 address without its brackets. */
export interface HostParts {
  readonly name: string;
  /** Empty where the scheme's own port is meant. */
  readonly port: string;
}

const HOST = /^(?:\[([0-9a-f:.]+)\]|([a-z0-9](?:[a-z0-9.-]*[a-z0-9])?))(?::(\d{1,5}))?$/;
const LOOPBACK: ReadonlySet<string> = new Set(['127.0.0.1', 'localhost', '::1']);

/** `'[::1]:4310'` → `{ name: '::1', port: '4310' }`; null for what is no host. */
export function readHost(host: string | null): HostParts | null {
  const found = HOST.exec(host?.toLowerCase() ?? '');
  if (found === null) return null;
  return { name: found[1] ?? found[2] ?? '', port: found[3] ?? '' };
}

/**
 * Whether a Host names this machine to itself, on any port. A page of the internet whose name was made to
 * point at 127.0.0.1 (DNS rebinding) sends its own name here, and is found out by it.
 */
export function isLoopbackHost(host: string | null): boolean {
  const read = readHost(host);
  return read !== null && LOOPBACK.has(read.name);
}

/** Whether a Host is one of these names or addresses, with this port. */
export function allowedHost(host: string | null, names: readonly string[], port: number): boolean {
  const read = readHost(host);
  return read !== null && read.port === String(port) && names.includes(read.name);
}

/** Whether an Origin is the page's own: `isOwnOrigin('https://h.local:4311', 'h.local:4311', 'https')` → true. */
export function isOwnOrigin(origin: string, host: string, scheme: 'http' | 'https'): boolean {
  return origin.toLowerCase() === `${scheme}://${host.toLowerCase()}`;
}

/** An address or name as it stands in an URL: IPv6 in brackets. */
export function urlOf(name: string, port: number): string {
  return `https://${name.includes(':') ? `[${name}]` : name}:${port}`;
}

/**
 * The name under which a machine is found in its home network by multicast DNS: the first part of what it
 * calls itself, and `.local`. Null where nothing usable is left. `'Anna-Mac.fritz.box'` → `'anna-mac.local'`.
 */
export function localName(hostname: string): string | null {
  const [first = ''] = hostname.toLowerCase().split('.');
  const name = first.replace(/[^a-z0-9-]/g, '').replace(/^-+|-+$/g, '');
  return name === '' || name === 'localhost' ? null : `${name.slice(0, 63)}.local`;
}
