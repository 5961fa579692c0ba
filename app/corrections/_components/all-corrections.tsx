import Link from 'next/link';
import { dayWords } from '#lib/publish/correction/correction-words';
import type { RecordedCorrection } from '#lib/publish/correction/recorded-correction';
import { ButtonLink } from '../../_ui/button';
import { EmptyState } from '../../_ui/empty-state';
import { SlateHead } from '../../_ui/slate-head';

interface Row {
  readonly id: string;
  readonly episodeId: string;
  /** Null where the episode was taken out. */
  readonly title: string | null;
  readonly told: RecordedCorrection;
}

interface Props {
  readonly rows: readonly Row[];
  readonly next: string | null;
  /** Whether this is the newest part of the list. */
  readonly first: boolean;
}

/** What was put right in public, over all episodes, the last first. */
export function AllCorrections({ rows, next, first }: Props) {
  return (
    <>
      <SlateHead kind="All episodes" title="Corrections" />
      {rows.length === 0 ? (
        <EmptyState title="No correction yet">
          Where a number that went out is another one later, its episode’s page of corrections
          offers to put it right. What was put right stands here.
        </EmptyState>
      ) : (
        <ul className="border-t-[1.5px] border-ink">
          {rows.map(({ id, episodeId, title, told }) => (
            <li
              key={id}
              className="grid gap-x-8 gap-y-1 border-b border-line py-4 md:grid-cols-[8rem_minmax(0,1fr)]"
            >
              <span className="font-slate text-head font-semibold">{dayWords(told.on)}</span>
              <span className="min-w-0">
                {title === null ? (
                  <b className="font-semibold">an episode that was taken out</b>
                ) : (
                  <Link className="link font-semibold" href={`/episodes/${episodeId}/corrections`}>
                    {title}
                  </Link>
                )}
                <span className="mt-1 block max-w-[80ch] break-words whitespace-pre-wrap">
                  {told.foot}
                </span>
              </span>
            </li>
          ))}
        </ul>
      )}
      {next && (
        <p className="mt-6">
          <ButtonLink href={`/corrections?after=${next}`}>Earlier corrections</ButtonLink>
        </p>
      )}
      {!first && (
        <p className="mt-4 print:hidden">
          <Link className="link" href="/corrections">
            To the latest
          </Link>
        </p>
      )}
    </>
  );
}
