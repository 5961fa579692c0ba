import type { Metadata } from 'next';
import { readAllChanges } from '#lib/store/read-all-changes';
import { readKitchen } from '#lib/store/read-kitchen';
import { ChangesView } from '../episodes/[id]/changes/_components/changes-view';
import { toldAct } from '../episodes/[id]/changes/told';
import { takeBackAny } from './actions';

export const metadata: Metadata = { title: 'What changed' };

interface Props {
  readonly searchParams: Promise<{ readonly before?: string | string[] }>;
}

export default async function AllChangesPage({ searchParams }: Props) {
  const { before } = await searchParams;
  const from = typeof before === 'string' && /^\d{1,9}$/.test(before) ? Number(before) : null;
  const { acts, next, names } = await readAllChanges(from === null ? {} : { before: from });
  const zone = (await readKitchen())?.kitchen.zone ?? 'UTC';
  const told = acts.map((act) => toldAct(act, names, { region: 'EU', zone }));
  return (
    <ChangesView
      here="/changes"
      of="Episodes, pantry and kitchen"
      takeBack={takeBackAny}
      values={{}}
      acts={told.filter(({ words }) => words.length > 0)}
      next={next}
      first={from === null}
    />
  );
}
