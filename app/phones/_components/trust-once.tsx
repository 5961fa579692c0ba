import { AUTHORITY } from '#lib/door/admission';
import type { OpenDoor } from '#lib/store/open-door';
import { localDate } from '#lib/units/local-date';

/** How a phone comes to trust the authority, and how to be sure that it is this computer's. */
export function TrustOnce({ door, zone }: { readonly door: OpenDoor; readonly zone: string }) {
  const [first = ''] = door.urls;
  return (
    <div className="max-w-[70ch] space-y-3">
      <p>
        The phone will warn that it does not know this computer. Fetch{' '}
        <span className="font-semibold break-all">
          {first}
          {AUTHORITY}
        </span>{' '}
        on it and trust that certificate; then it warns no more, and copies, keeps the screen awake
        and works in a dropped connection. It works without, with the page kept open.
      </p>
      <p>
        <strong>iPhone:</strong> allow the download; in Settings, General, VPN &amp; Device
        Management install it; in General, About, Certificate Trust Settings switch it on.
      </p>
      <p>
        <strong>Android:</strong> in Settings search for “CA certificate”, choose Install anyway,
        and take the file from Downloads.
      </p>
      <p>
        Trust it only where the phone shows this SHA-256 fingerprint:
        <span className="mt-1 block font-semibold break-all">{door.fingerprint}</span>
      </p>
      <p className="text-fine text-soft">
        It can vouch for addresses of home networks and names in .local alone, for no site of the
        internet, until {localDate(door.until, zone)}.
      </p>
    </div>
  );
}
