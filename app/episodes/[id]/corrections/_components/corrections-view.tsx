import Link from 'next/link';
import type { CorrectionNeeded } from '#lib/publish/correction/correction-of';
import { ButtonForm } from '../../../../_forms/button-form';
import { ButtonLink } from '../../../../_ui/button';
import { EmptyState } from '../../../../_ui/empty-state';
import { SlateHead } from '../../../../_ui/slate-head';
import { LastChange } from '../../_components/last-change';
import { lockNumbers } from '../../publish/actions';
import { CorrectionForm } from './correction-form';
import { HistoryLocks } from './history-locks';
import { MadeCorrectionPart } from './made-corrections';
import { NumberChanges } from './number-changes';
import { PastedPart } from './pasted-part';
import { SweepPart } from './sweep-part';
import type { CorrectionsPage, GoneOut } from './view';
import { WrongFoods } from './wrong-foods';

/** What went out and is another number now, how it is put right, and what was put right before. */
export function CorrectionsView({
  page,
  first,
}: {
  readonly page: CorrectionsPage;
  readonly first: boolean;
}) {
  const { went, recorded, next, episodeId } = page;
  const href = `/episodes/${episodeId}/corrections`;
  const newest = recorded.findIndex(({ historyOnly }) => !historyOnly);
  const toPutRight = first && went?.needed.kind === 'numbers';
  return (
    <>
      <SlateHead
        kind="Corrections"
        title={page.title}
        shut={went === null || went.needed.kind === 'none'}
        cells={first ? [{ name: 'Now', value: nowWord(page) }] : []}
      />
      <div className="grid grid-cols-1 gap-10">
        {first &&
          (went === null ? <NothingOut page={page} /> : <ToCorrect page={page} went={went} />)}
        {first && page.pasted && <PastedPart page={page} pasted={page.pasted} />}
        {first && went && <HistoryLocks of={page.history} />}
        {first && went && <WrongFoods foods={went.wrongFoods} />}
        {(recorded.length > 0 || !first) && (
          <section aria-labelledby="made">
            <h2 id="made">{first ? 'Corrections made' : 'Earlier corrections'}</h2>
            <ul className="mt-1">
              {recorded.map((each, at) => (
                <MadeCorrectionPart
                  key={each.id}
                  of={each}
                  lead={first && at === newest}
                  episodeId={episodeId}
                  isNow={at === newest && went?.needed.kind === 'none'}
                />
              ))}
            </ul>
            {next && (
              <p className="mt-4 print:hidden">
                <ButtonLink href={`${href}?after=${next}`}>Earlier corrections</ButtonLink>
              </p>
            )}
            {!first && (
              <p className="mt-4 print:hidden">
                <Link className="link inline-flex min-h-11 items-center" href={href}>
                  To the latest
                </Link>
              </p>
            )}
          </section>
        )}
        <SweepPart rows={page.swept} episodeId={episodeId} />
        <p className="print:hidden">
          <Link className="link inline-flex min-h-11 items-center" href="/corrections">
            Corrections of all episodes
          </Link>
        </p>
      </div>
      <LastChange episodeId={episodeId} last={page.last} formOpen={toPutRight} />
    </>
  );
}

function nowWord({ went, pasted }: CorrectionsPage): string {
  if (went === null) return pasted === null ? 'nothing out yet' : 'as pasted';
  const { kind, numbers } = went.needed;
  if (kind === 'numbers') return `${String(numbers.length)} to put right`;
  return kind === 'none' ? 'as it went out' : 'lock broken';
}

function NothingOut({ page: { episodeId, history, pasted } }: { readonly page: CorrectionsPage }) {
  if (history.otherRows + history.unlike > 0) {
    return (
      <EmptyState
        title="Locks kept as history"
        action={<ButtonLink href={`/episodes/${episodeId}/publish`}>Publish</ButtonLink>}
      >
        <HistoryLocks of={history} /> Lock the numbers anew before you copy.
      </EmptyState>
    );
  }
  return (
    <EmptyState
      title={
        pasted === null ? 'Nothing has gone out yet' : 'No text of this program has gone out yet'
      }
      action={<ButtonLink href={`/episodes/${episodeId}/publish`}>Publish</ButtonLink>}
    >
      Once a description was copied or the day of publishing is past, a change under the locked
      numbers is offered here as a correction: old number, new number, reason and date.
    </EmptyState>
  );
}

function ToCorrect({ page, went }: { readonly page: CorrectionsPage; readonly went: GoneOut }) {
  const { episodeId, inputsSha256, today } = page;
  const { needed } = went;
  const since = wentOutWith(went);
  if (needed.kind === 'none') {
    return (
      <section aria-labelledby="to-correct">
        <h2 id="to-correct">Nothing to correct</h2>
        <p className="mt-1">What went out with {since} stands: nothing under it has changed.</p>
      </section>
    );
  }
  const values = { episodeId, inputsSha256 };
  if (needed.kind !== 'numbers') {
    return (
      <section aria-labelledby="to-correct">
        <h2 id="to-correct">No correction is needed</h2>
        <p className="mt-1 mb-3 max-w-[70ch]">{whyNone(went, since)}</p>
        {went.lockedSince === null && (
          <ButtonForm action={lockNumbers} values={values} tone="go" size="usual">
            Lock again
          </ButtonForm>
        )}
      </section>
    );
  }
  return (
    <section
      aria-labelledby="to-correct"
      className="grid grid-cols-1 gap-x-12 gap-y-6 lg:grid-cols-[minmax(0,1.4fr)_minmax(0,1fr)]"
    >
      <div className="min-w-0">
        <h2 id="to-correct">To put right</h2>
        <p className="mt-1 mb-2">These went out with {since} and are other numbers now.</p>
        {!went.isPublic && (
          <p className="mb-2 max-w-[70ch]">
            No day of publishing is set, so nobody knows whether that text was pasted. If it was
            not, no viewer has read these numbers: copy the description again instead.
          </p>
        )}
        {went.copiedSince !== null && (
          <p className="mb-2 max-w-[70ch]">
            A text was copied again since, with lock {went.copiedSince}: who knows the earlier
            numbers was not told. They stay here until a correction is made.
          </p>
        )}
        <NumberChanges
          caption="Numbers to put right"
          numbers={needed.numbers}
          workingOf={episodeId}
        />
        {needed.sums.length > 0 && (
          <p className="mt-2 max-w-[70ch] text-fine text-soft">{sumsWords(needed)}</p>
        )}
      </div>
      <div className="print:hidden">
        <h2 className="mb-3">Say it</h2>
        <CorrectionForm
          episodeId={episodeId}
          lockId={went.lockId}
          inputsSha256={inputsSha256}
          reason={went.reason}
          today={today}
        />
        <p className="mt-3 text-fine text-soft">
          This locks the numbers as they are now. You get a text for the description’s foot and one
          to reply with. “Undo” at the foot of the page takes both back.
        </p>
      </div>
    </section>
  );
}

/** "lock 1, first copied Thu 10 Dec, 18:02": which of several texts is meant. */
function wentOutWith({ seq, at, copiedAt }: GoneOut): string {
  const lock = `lock ${String(seq)}`;
  return copiedAt === null ? `${lock} of ${at}` : `${lock}, first copied ${copiedAt},`;
}

/** Why there is nothing to correct, though the lock is not as it was. */
function whyNone({ needed, lockedSince }: GoneOut, since: string): string {
  if (needed.kind === 'unread') {
    return `What went out with ${since} cannot be read by this version of the program, so nobody can say what of it is otherwise now. Compare the copied text by eye.`;
  }
  const moved = needed.ranges.length > 0 ? '; only ranges have moved' : '';
  const sums = sumsWords(needed);
  const next =
    lockedSince === null
      ? 'Lock the numbers again, and that is all.'
      : `The numbers are locked again, with lock ${String(lockedSince)}.`;
  return `Something under ${since} has changed, and no number that went out is another one${moved}. ${sums}${next}`;
}

/** Numbers that give way to the sum, in a sentence; empty where none does. */
function sumsWords({ sums }: CorrectionNeeded): string {
  if (sums.length === 0) return '';
  const words = sums.map(({ dish, part, label, unit, from, to }) => {
    const of = dish === null ? part : `${dish}, ${part}`;
    return `${of}: ${label} ${to?.text ?? 'none'} ${unit} instead of ${from?.text ?? 'none'}`;
  });
  return `Written otherwise only so that the numbers add up, and nothing to correct: ${words.join('; ')}. `;
}
