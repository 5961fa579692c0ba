/** A name to begin with for a device, from what its browser says of itself; empty where it says nothing known. */
export function deviceName(userAgent: string): string {
  if (/iPhone/.test(userAgent)) return 'iPhone';
  if (/iPad/.test(userAgent)) return 'iPad';
  if (/Android/.test(userAgent))
    return /Mobile/.test(userAgent) ? 'Android phone' : 'Android tablet';
  return '';
}
