import Link from 'next/link';
import { ButtonForm } from '../../../_forms/button-form';
import { sameLabel } from '../again-actions';
import type { AgainView, CopyView, LabelQuestion } from '../again';

interface Props {
  readonly episodeId: string;
  readonly segmentId: string;
  readonly again: AgainView | undefined;
}

/** Of a copied dish: what it comes from, what stayed behind, and labels that may have changed since. */
export function AgainPart({ episodeId, segmentId, again }: Props) {
  const copy = again?.copies.find((each) => each.segmentId === segmentId);
  if (!again || !copy) return null;
  return (
    <div className="mb-6 print:hidden">
      <Origin copy={copy} episodeId={episodeId} />
      <AgainNotes again={again} of={segmentId} />
      {copy.labels.length > 0 && (
        <LabelQuestions episodeId={episodeId} segmentId={segmentId} labels={copy.labels} />
      )}
    </div>
  );
}

function Origin({ copy, episodeId }: { readonly copy: CopyView; readonly episodeId: string }) {
  const { from, copiedDay } = copy;
  if (!from) return <p className="text-fine text-soft">Again, from a dish that was taken out.</p>;
  const elsewhere = from.episodeId === episodeId ? '' : `, ${from.episodeTitle}`;
  return (
    <p className="text-fine text-soft">
      Again, from{' '}
      <Link className="link" href={`/episodes/${from.episodeId}#row-${from.segmentId}`}>
        {from.title}
        {elsewhere}
      </Link>
      , on {copiedDay}
    </p>
  );
}

/** What could not come along, said once after the copying. */
export function AgainNotes({ again, of }: { readonly again: AgainView; readonly of: string }) {
  const messages = again.notes?.of === of ? again.notes.messages : [];
  if (messages.length === 0) return null;
  return (
    <div role="status" className="mt-3 max-w-[70ch] border-l-[6px] border-ink py-1 pl-3">
      <p className="font-semibold">Not as it was:</p>
      <ul>
        {messages.map((message) => (
          <li key={message}>{message}</li>
        ))}
      </ul>
    </div>
  );
}

interface LabelsProps {
  readonly episodeId: string;
  readonly segmentId: string;
  readonly labels: readonly LabelQuestion[];
}

/** Asked until answered, once for each copy; a label read in the month before is not asked about. */
function LabelQuestions({ episodeId, segmentId, labels }: LabelsProps) {
  const all = labels.map(({ foodId }) => foodId).join(' ');
  return (
    <section aria-labelledby={`labels-${segmentId}`} className="mt-4 max-w-3xl">
      <div className="flex flex-wrap items-baseline justify-between gap-x-6">
        <h3 id={`labels-${segmentId}`}>Same label as last time?</h3>
        {labels.length > 1 && (
          <ButtonForm action={sameLabel} values={{ episodeId, foodIds: all }}>
            All {labels.length} are the same
          </ButtonForm>
        )}
      </div>
      <ul className="mt-1 border-t border-line">
        {labels.map(({ foodId, name, readOn }) => (
          <li
            key={foodId}
            className="flex flex-wrap items-center justify-between gap-x-6 gap-y-1 border-b border-line py-1.5"
          >
            <span className="min-w-0 flex-1 basis-56 wrap-anywhere">
              {name}{' '}
              <span className="text-fine text-soft">
                {readOn === null ? 'label read on no known date' : `label read ${readOn}`}
              </span>
            </span>
            <span className="ml-auto flex items-center gap-4">
              <Link
                className="link inline-flex min-h-6 items-center text-fine"
                href={`/pantry/foods/${foodId}/again`}
              >
                It changed<span className="unseen">: {name}</span>
              </Link>
              <ButtonForm
                action={sameLabel}
                values={{ episodeId, foodIds: foodId }}
                tone="plain"
                label={`Same label: ${name}`}
              >
                Same label
              </ButtonForm>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
