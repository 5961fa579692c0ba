import Link from 'next/link';
import { lockWords } from '#lib/publish/lock-words';
import { ButtonForm } from '../../../../_forms/button-form';
import { DifferenceTables } from '../../_components/difference-tables';
import { lockNumbers } from '../actions';
import { LOCK_ID } from '../lock-href';
import { LockHeading } from './lock-heading';
import { PutRightNote } from './put-right';
import { toldOf, type PublishPage } from './view';

/** How much of a hash is shown: enough to compare two by eye. */
const SHOWN_HASH = 12;

/** What is locked and since when, what broke it, and the way to lock it by hand or again. */
export function LockPart({ page }: { readonly page: PublishPage }) {
  const { lock, file, inputsSha256, putRight } = page;
  const values = { episodeId: file.episode.id, inputsSha256 };
  return (
    <section aria-labelledby={LOCK_ID}>
      <LockHeading />
      <p className="mt-1 max-w-[60ch]">{lockWords({ ...toldOf(page), reason: null })}</p>
      {lock === null ? (
        <p className="mt-1 max-w-[60ch] text-soft">
          Lock them when the cut is final: from then on a change under them is told. Copying the
          description locks them too.
        </p>
      ) : (
        <p className="text-fine text-soft">
          Lock {lock.seq}: every number of every dish and of the day, with what each rests on.
          SHA-256 <span className="font-slate">{lock.sha256.slice(0, SHOWN_HASH)}…</span>
        </p>
      )}
      {lock?.broken != null && <DifferenceTables difference={lock.difference} since={lock.at} />}
      {putRight && (
        <div className="mt-3">
          <PutRightNote episodeId={file.episode.id} of={putRight} asButton />
        </div>
      )}
      <div className="mt-3 flex flex-wrap items-center gap-x-6 gap-y-2">
        {(lock === null || lock.broken !== null) && (
          <ButtonForm action={lockNumbers} values={values} tone="plain" size="usual">
            {lock === null ? 'Lock the numbers' : 'Lock again'}
          </ButtonForm>
        )}
        <Link className="link" href={`/episodes/${file.episode.id}/evidence`}>
          Evidence
        </Link>
        <Link className="link" href={`/episodes/${file.episode.id}/corrections`}>
          Corrections
        </Link>
      </div>
    </section>
  );
}
