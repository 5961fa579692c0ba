import Link from 'next/link';
import type { LockStanding } from '#lib/lock/lock-standing';
import { lockWords, type LockTold } from '#lib/publish/lock-words';
import { lockHref } from '../lock-href';

interface Props {
  readonly episodeId: string;
  readonly told: LockTold;
  /** What holds of this page beside it. */
  readonly also?: string;
}

const WAY: Readonly<Record<LockStanding, string>> = {
  draft: 'Lock the numbers',
  locked: 'To the lock',
  broken: 'See what changed',
};

/** How the numbers of a page stand to the lock, and the way to it. */
export function LockLine({ episodeId, told, also = '' }: Props) {
  const look = told.standing === 'broken' ? 'border-l-[6px] border-hand pl-3' : '';
  return (
    <p className={`mb-6 max-w-[80ch] ${look}`}>
      {lockWords(told)} {also}{' '}
      <Link className="link print:hidden" href={lockHref(episodeId)}>
        {WAY[told.standing]}
      </Link>
    </p>
  );
}
