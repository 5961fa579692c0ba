import { sessionEnd } from '#lib/door/session';
import type { PairedDevice } from '#lib/store/paired-devices';
import { localDate, localMoment } from '#lib/units/local-date';
import { ButtonForm } from '../../_forms/button-form';
import { sendDeviceAway } from '../actions';

/** Who was let in, and who is in. */
export function Devices({
  devices,
  zone,
}: {
  readonly devices: readonly PairedDevice[];
  readonly zone: string;
}) {
  if (devices.length === 0) return <p className="text-soft">No device was let in yet.</p>;
  return (
    <ul className="max-w-[48rem]">
      {devices.map((device) => (
        <li
          key={device.id}
          className="flex flex-wrap items-center justify-between gap-x-6 gap-y-1 border-b border-line py-2"
        >
          <span className="min-w-0">
            <span className="font-semibold break-words">{device.name}</span>
            <span className="block text-fine text-soft">
              Let in {localMoment(device.pairedAt, zone)}; {standing(device, zone)}
            </span>
          </span>
          {device.isIn && (
            <ButtonForm
              action={sendDeviceAway}
              values={{ deviceId: device.id, rev: device.rev, name: device.name }}
              label={`Send away ${device.name}`}
              tone="hand"
            >
              Send away
            </ButtonForm>
          )}
        </li>
      ))}
    </ul>
  );
}

function standing({ isIn, endedAt, pairedAt }: PairedDevice, zone: string): string {
  if (isIn) return `in until ${localDate(sessionEnd(pairedAt), zone)}`;
  return endedAt ? `sent away ${localMoment(endedAt, zone)}` : 'no longer in';
}
