import type { LockStanding } from '#lib/lock/lock-standing';

const WORDS: Readonly<Record<LockStanding, string>> = {
  draft: 'Not locked: these numbers are a draft and may still change.',
  locked: 'From the numbers lock.',
  broken: 'The lock is broken: these are the numbers that were locked, not those of now.',
};

/** Whether the numbers on a page are those of the lock; hatched where they are not. */
export function StandingNote({ standing }: { readonly standing: LockStanding }) {
  const look =
    standing === 'locked' ? 'text-soft' : 'hatch border-y border-line py-2 pl-1 font-semibold';
  return <p className={`mb-5 text-fine ${look}`}>{WORDS[standing]}</p>;
}
