import type { Metadata } from 'next';
import { readKitchen } from '#lib/store/read-kitchen';
import { readOpenDoor } from '#lib/store/open-door';
import { readPairedDevices } from '#lib/store/paired-devices';
import { heldCode } from '#lib/store/pairing-codes';
import { EmptyState } from '../_ui/empty-state';
import { SlateHead } from '../_ui/slate-head';
import { PhonesView } from './_components/phones-view';
import { cameByDoor } from './came-by-door';

export const metadata: Metadata = { title: 'Phones' };

export default async function PhonesPage() {
  if (await cameByDoor()) {
    return (
      <>
        <SlateHead kind="Phones" title="The phone’s way in" />
        <EmptyState title="On the computer itself">
          Codes are made, and devices sent away, where the program was started. Open this page
          there.
        </EmptyState>
      </>
    );
  }
  const at = new Date();
  const [door, devices, kitchen] = await Promise.all([
    readOpenDoor(),
    readPairedDevices(at),
    readKitchen(),
  ]);
  const zone = kitchen?.kitchen.zone ?? 'UTC';
  return <PhonesView door={door} {...heldCode(at)} devices={devices} zone={zone} />;
}
