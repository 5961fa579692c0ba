import type { Metadata } from 'next';
import Link from 'next/link';
import { cookies, headers } from 'next/headers';
import { deviceName } from '#lib/door/device-name';
import { SESSION_COOKIE } from '#lib/door/session';
import { toldWords } from '#lib/door/told';
import { isLetIn } from '#lib/store/paired-devices';
import { ButtonLink } from '../_ui/button';
import { EmptyState } from '../_ui/empty-state';
import { SlateHead } from '../_ui/slate-head';
import { cameByDoor } from '../phones/came-by-door';
import { PairView } from './_components/pair-view';

export const metadata: Metadata = { title: 'Let this device in' };

type Query = Readonly<Record<string, string | string[] | undefined>>;

interface Props {
  readonly searchParams: Promise<Query>;
}

export default async function PairPage({ searchParams }: Props) {
  if (!(await cameByDoor())) {
    return (
      <>
        <SlateHead kind="Phones" title="Let a device in" />
        <EmptyState title="This is the computer itself">
          A code for a phone is made at{' '}
          <Link className="link" href="/phones">
            Phones
          </Link>
          .
        </EmptyState>
      </>
    );
  }
  const token = (await cookies()).get(SESSION_COOKIE)?.value ?? '';
  if (await isLetIn(token, new Date())) {
    return (
      <>
        <SlateHead kind="Phones" title="Let this device in" />
        <EmptyState title="It is in already" action={<ButtonLink href="/">Go on</ButtonLink>}>
          On the computer, at Phones, it can be sent away.
        </EmptyState>
      </>
    );
  }
  const query = await searchParams;
  const text = (name: string) => {
    const value = query[name];
    return typeof value === 'string' ? value.slice(0, 80) : undefined;
  };
  const told = text('told') ?? '';
  const begin = deviceName((await headers()).get('user-agent') ?? '');
  const typed = { name: text('name') ?? begin, code: text('code') ?? '' };
  return (
    <PairView
      words={toldWords({ told, left: text('left') ?? '' })}
      aboutName={told === 'name'}
      typed={typed}
    />
  );
}
