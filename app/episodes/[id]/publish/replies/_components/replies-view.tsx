import Link from 'next/link';
import type { PinnedOffer } from '#lib/swap/pinned-offers';
import { CopyButton } from '../../../../../_ui/copy-button';
import { EmptyState } from '../../../../../_ui/empty-state';
import { SlateHead } from '../../../../../_ui/slate-head';
import { LastChange } from '../../../_components/last-change';
import { LockLine } from '../../_components/lock-line';
import type { RepliesPage } from '../read-replies';
import { repliesHref, replyHref } from '../reply-href';
import { CommentForm } from './comment-form';
import { OpenReply } from './open-reply';

const PINNED_WORDS: Readonly<Record<PinnedOffer['numbers'], string>> = {
  now: '',
  anew: 'Written anew with the numbers that go out now: the saved reply has others.',
  old: 'Of old numbers: with those that go out now this difference no longer gives the viewers’ number. Look at it before you pin it.',
};

/** "I get a different number": the comment, what gives its number, the reply, and all replies so far. */
export function RepliesView({ page }: { readonly page: RepliesPage }) {
  const { file, open, lock, pinned, last } = page;
  const { id, title } = file.episode;
  return (
    <>
      <SlateHead kind="I get a different number" title={title} shut={lock.standing === 'locked'} />
      <LockLine episodeId={id} told={lock} />
      <div className="print:hidden">
        <CommentForm key={open?.reply.id ?? ''} episodeId={id} />
      </div>
      {open && <OpenReply page={page} open={open} />}
      {pinned.map(({ slip, segmentId, count, text, numbers }, at) => (
        <section
          key={`${segmentId} ${slip}`}
          aria-labelledby={`pin-${at}`}
          className="mt-10 max-w-3xl"
        >
          <h2 id={`pin-${at}`}>Worth pinning: {count} viewers have the same difference</h2>
          {PINNED_WORDS[numbers] && <p className="mt-1 text-fine">{PINNED_WORDS[numbers]}</p>}
          <p
            id={`pinned-${at}`}
            className="mt-2 border-l-[3px] border-ink pl-4 whitespace-pre-wrap"
          >
            {text}
          </p>
          <div className="mt-3">
            <CopyButton text={text} label="Copy it" shownIn={`pinned-${at}`} tone="plain" />
          </div>
        </section>
      ))}
      <Replies page={page} />
      <p className="mt-8 print:hidden">
        <Link className="link inline-flex min-h-11 items-center" href={`/episodes/${id}/publish`}>
          Publish
        </Link>
      </p>
      <LastChange episodeId={id} last={last} formOpen={open !== null} />
    </>
  );
}

function Replies({ page }: { readonly page: RepliesPage }) {
  const { rows, file, pages } = page;
  const episodeId = file.episode.id;
  return (
    <section aria-labelledby="replies" className="mt-12">
      <h2 id="replies">Comments and replies</h2>
      {rows.length === 0 ? (
        <div className="mt-2">
          <EmptyState title="No comments yet">
            Paste the first comment that has another number than yours. Which single difference
            gives it is looked for, and a reply is drafted that you put into your own words.
          </EmptyState>
        </div>
      ) : (
        <ul className="mt-2 max-w-3xl">
          {rows.map(({ id, at, comment, about, text, old }) => (
            <li key={id} id={`reply-${id}`} className="border-b border-line py-3">
              <p className="text-fine text-soft">{[at, about].filter(Boolean).join(' · ')}</p>
              <p className="line-clamp-3 break-words">
                <bdi>{comment}</bdi>
              </p>
              {text === '' ? (
                <p className="hatch mt-1 py-0.5 pl-1 text-fine font-semibold">No reply yet</p>
              ) : (
                <p className="mt-1 border-l-[3px] border-ink pl-3 break-words whitespace-pre-wrap">
                  {text}
                </p>
              )}
              {old !== '' && (
                <p className="mt-1 text-fine font-semibold text-hand">It says {old}.</p>
              )}
              <Link
                className="link inline-flex min-h-8 items-center text-fine print:hidden"
                href={replyHref(episodeId, { replyId: id })}
                aria-label={`Open the comment of ${at}${about ? `, ${about}` : ''}`}
              >
                {text === '' ? 'Answer it' : 'Open it'}
              </Link>
            </li>
          ))}
        </ul>
      )}
      {pages > 1 && <Pages page={page} />}
    </section>
  );
}

function Pages({ page: { page, pages, file } }: { readonly page: RepliesPage }) {
  const href = (at: number) => `${repliesHref(file.episode.id)}?page=${at}#replies`;
  return (
    <nav aria-label="Pages of comments" className="mt-3 flex gap-6 print:hidden">
      {page > 1 && (
        <Link className="link inline-flex min-h-11 items-center" href={href(page - 1)}>
          Newer
        </Link>
      )}
      <span className="inline-flex items-center text-soft">
        {page} of {pages}
      </span>
      {page < pages && (
        <Link className="link inline-flex min-h-11 items-center" href={href(page + 1)}>
          Older
        </Link>
      )}
    </nav>
  );
}
