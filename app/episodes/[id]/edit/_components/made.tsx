import Link from 'next/link';
import { madeWords } from '#lib/overview/made-of';
import { PROVISIONAL } from '../../../../_ui/provisional';
import type { EditPage } from './view';

interface Props {
  readonly page: EditPage;
  readonly drafted: { readonly left: number } | null;
}

/** What the episode has, right after its texts were read; and as long as foods wait for a yes, where it is said. */
export function Made({ page, drafted }: Props) {
  const { episodeId, made } = page;
  const words = madeWords(made);
  if (drafted === null && made.toConfirm === 0) return null;
  return (
    <div className="mb-4 max-w-[70ch]">
      {drafted !== null && (
        <p className="text-lead">
          {words === null
            ? 'The episode has no dish and no talk yet.'
            : `The episode has ${words}.`}{' '}
          <LeftOut episodeId={episodeId} count={drafted.left} />
        </p>
      )}
      {made.confirmIn !== null && (
        <p className={`mt-2 border-b border-line px-2 py-2 print:hidden ${PROVISIONAL}`}>
          {made.toConfirm === 1 ? 'One food was' : `${made.toConfirm} foods were`} only proposed,
          and the numbers rest on {made.toConfirm === 1 ? 'it' : 'them'}.{' '}
          <Link className="link" href={`/episodes/${episodeId}#confirm-${made.confirmIn}`}>
            {made.toConfirm === 1 ? 'Confirm it' : `Confirm the ${made.toConfirm} foods`}
          </Link>
        </p>
      )}
    </div>
  );
}

function LeftOut({ episodeId, count }: { readonly episodeId: string; readonly count: number }) {
  if (count === 0) return null;
  return (
    <>
      {count === 1 ? 'One line' : `${count} lines`} became no part of it:{' '}
      <Link className="link" href={`/episodes/${episodeId}/edit/draft#left-out`}>
        see which
      </Link>
      .
    </>
  );
}
