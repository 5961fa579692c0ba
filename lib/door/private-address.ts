/** A range of addresses: its first address, and how many leading bits are the range's. */
export interface AddressRange {
  readonly address: string;
  readonly bits: number;
}

/**
 * The ranges that homes use and the internet does not: RFC 1918 section 3 and RFC 4193 section 3 (both from
 * memory). Link-local IPv6 is left out: an URL has no way to say on which network it is meant.
 */
export const PRIVATE_RANGES: readonly AddressRange[] = [
  { address: '192.168.0.0', bits: 16 },
  { address: '10.0.0.0', bits: 8 },
  { address: '172.16.0.0', bits: 12 },
  { address: 'fc00::', bits: 7 },
];

/** Networks of containers, virtual machines and tunnels, which are not the home's, by usual names of interfaces. */
const NOT_HOME =
  /^(?:docker|br-|veth|virbr|vmnet|vboxnet|vEthernet|lxc|cni|tun|tap|wg|utun|ppp|zt|tailscale|ham)/i;

/** One address of this machine, as the system lists it. */
export interface NetworkAddress {
  readonly interfaceName: string;
  readonly address: string;
  readonly internal: boolean;
}

/** The place of a private address in the order of ranges; -1 for any other. IPv4 and IPv6 as text. */
export function privateRangeOf(address: string): number {
  if (address.includes(':')) return /^f[cd][0-9a-f]{2}:/i.test(address) ? 3 : -1;
  const parts = address.split('.').map(Number);
  const [a = -1, b = -1] = parts;
  if (parts.length !== 4 || parts.some((n) => !Number.isInteger(n) || n < 0 || n > 255)) return -1;
  if (a === 192 && b === 168) return 0;
  if (a === 10) return 1;
  return a === 172 && b >= 16 && b <= 31 ? 2 : -1;
}

/**
 * The addresses under which a phone at home reaches this machine: private ones, of networks that are not
 * made by programs; the likeliest first.
 */
export function homeAddresses(all: readonly NetworkAddress[]): string[] {
  const home = all.filter(
    ({ internal, interfaceName, address }) =>
      !internal && !NOT_HOME.test(interfaceName) && privateRangeOf(address) >= 0,
  );
  const ranked = home.map(({ address }) => ({ address, rank: privateRangeOf(address) }));
  ranked.sort((x, y) => x.rank - y.rank || (x.address < y.address ? -1 : 1));
  return [...new Set(ranked.map(({ address }) => address))];
}
