import type { ReactNode } from 'react';
import { codeShown } from '#lib/door/code-text';
import { expiresAtMs, type Closed, type PairingCode } from '#lib/door/pairing-code';
import type { OpenDoor } from '#lib/store/open-door';
import type { PairedDevice } from '#lib/store/paired-devices';
import { localMoment } from '#lib/units/local-date';
import { ButtonForm } from '../../_forms/button-form';
import { EmptyState } from '../../_ui/empty-state';
import { SlateHead } from '../../_ui/slate-head';
import { makeCode } from '../actions';
import { Devices } from './devices';
import { QrCode } from './qr-code';
import { TrustOnce } from './trust-once';
import { Watch } from './watch';

interface Props {
  readonly door: OpenDoor | null;
  readonly code: PairingCode | null;
  readonly stands: 'open' | Closed;
  readonly devices: readonly PairedDevice[];
  readonly zone: string;
}

const CLOSED: Readonly<Record<Closed, string>> = {
  none: 'A code lets one device in. It is good for ten minutes.',
  used: 'The last code has let a device in. Each lets in one.',
  expired: 'The last code’s ten minutes are over.',
  void: 'The last code is no longer good: it was typed wrong five times.',
};

/** The phones: how one is let in, how it comes to trust this computer, and who is in. */
export function PhonesView({ door, code, stands, devices, zone }: Props) {
  const inside = devices.filter((device) => device.isIn);
  return (
    <>
      <SlateHead
        kind="Phones"
        title="The phone’s way in"
        cells={[
          { name: 'Door', value: door ? 'open' : 'shut' },
          { name: 'Let in', value: inside.length },
        ]}
      />
      {door ? (
        <>
          <Section id="let-in" title="Let a phone in">
            {code && stands === 'open' ? (
              <CodeView door={door} code={code} zone={zone} />
            ) : (
              <>
                <p className="mb-3">{stands === 'open' ? CLOSED.none : CLOSED[stands]}</p>
                <ButtonForm action={makeCode} values={{}} tone="go" size="usual">
                  {stands === 'none' ? 'Make a code' : 'Make a new code'}
                </ButtonForm>
              </>
            )}
          </Section>
          <Section id="trust" title="Trust this computer, once">
            <TrustOnce door={door} zone={zone} />
          </Section>
        </>
      ) : (
        <EmptyState title="The door is shut: no phone reaches this computer">
          Stop the program with Ctrl-C and start it with <code>npm start -- --phone</code>. Then it
          also answers in your home network, by HTTPS, and only to devices that you let in here.
        </EmptyState>
      )}
      <Section id="devices" title="Devices">
        <Devices devices={devices} zone={zone} />
      </Section>
    </>
  );
}

function CodeView({
  door,
  code,
  zone,
}: {
  readonly door: OpenDoor;
  readonly code: PairingCode;
  readonly zone: string;
}) {
  const [first = '', ...others] = door.urls;
  return (
    <div className="flex flex-wrap gap-x-10 gap-y-5">
      <Watch />
      <QrCode text={`${first}/pair#${code.code}`} label="QR code of the address with the code" />
      <div className="min-w-0 flex-[1_1_18rem]">
        <p>Point the phone’s camera at the picture, or open this address on it:</p>
        <p className="mt-1 font-semibold break-all">{first}/pair</p>
        <p className="mt-5">Code</p>
        <p className="font-slate text-clock font-semibold tracking-[0.06em]">
          {codeShown(code.code)}
        </p>
        <p className="mt-1 text-fine text-soft">
          Good once, until {localMoment(new Date(expiresAtMs(code)), zone)}. Phone and computer must
          be in the same network.
        </p>
        {others.length > 0 && (
          <p className="mt-4 text-fine">
            If that address does not answer:{' '}
            {others.map((url) => (
              <span key={url} className="mr-3 break-all">
                {url}/pair
              </span>
            ))}
          </p>
        )}
        <div className="mt-4">
          <ButtonForm action={makeCode} values={{}}>
            Make another code instead
          </ButtonForm>
        </div>
      </div>
    </div>
  );
}

function Section({
  id,
  title,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly children: ReactNode;
}) {
  return (
    <section aria-labelledby={id} className="mt-10">
      <h2 id={id} className="mb-4">
        {title}
      </h2>
      {children}
    </section>
  );
}
