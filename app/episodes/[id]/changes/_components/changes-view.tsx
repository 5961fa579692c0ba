import Link from 'next/link';
import { ButtonForm } from '../../../../_forms/button-form';
import type { FormAction } from '../../../../_forms/parse-then-act';
import { EmptyState } from '../../../../_ui/empty-state';
import type { ToldAct } from '../told';

interface Props {
  /** The page's own address. */
  readonly here: string;
  /** Whose journal it is: an episode's title, or all of it. */
  readonly of: string;
  readonly takeBack: FormAction;
  /** Sent with the act that is undone. */
  readonly values: Readonly<Record<string, string>>;
  readonly acts: readonly ToldAct[];
  /** Where the older ones begin; null on the last page. */
  readonly next: number | null;
  readonly first: boolean;
}

/** A journal in words, the newest act first, each with the way to undo it. */
export function ChangesView({ here, of, takeBack, values, acts, next, first }: Props) {
  return (
    <>
      <h1 className="text-board">What changed</h1>
      <p className="mt-1 text-soft">
        {of}. Every change can be undone, and an undo as well. What later changes rest on waits for
        those.
      </p>
      {acts.length === 0 && (
        <EmptyState title="Nothing here">
          What you add, change or take out is told here, with the way back.
        </EmptyState>
      )}
      <ol className="mt-6 border-t-[1.5px] border-ink">
        {acts.map((act) => (
          <li
            key={act.groupId}
            className="grid gap-x-6 gap-y-1 border-b border-line py-2.5 md:grid-cols-[9.5rem_minmax(0,1fr)_auto]"
          >
            <p className="text-fine text-soft">{act.when}</p>
            <div className="min-w-0 wrap-anywhere">
              {act.label.startsWith('Undo: ') || act.label.startsWith('Redo: ') ? (
                <p className="lettering text-fine text-soft">{act.label.slice(0, 4)}</p>
              ) : null}
              {act.words.map((words) => (
                <p key={words}>{words}</p>
              ))}
            </div>
            {act.undoable ? (
              <ButtonForm
                action={takeBack}
                values={{ ...values, groupId: act.groupId }}
                label={`Undo: ${act.words[0] ?? act.label}`}
              >
                Undo
              </ButtonForm>
            ) : (
              <span />
            )}
          </li>
        ))}
      </ol>
      <nav aria-label="Pages" className="mt-4 flex gap-6">
        {!first && (
          <Link href={here} className="link">
            The newest
          </Link>
        )}
        {next !== null && (
          <Link href={`${here}?before=${next}`} className="link">
            Older changes
          </Link>
        )}
      </nav>
    </>
  );
}
