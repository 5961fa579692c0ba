import Link from 'next/link';
import type { PastedNumber } from '#lib/publish/correction/pasted-description';
import { correctionFoot, dayWords } from '#lib/publish/correction/correction-words';
import { CopyButton } from '../../../../_ui/copy-button';
import { NumberChanges } from './number-changes';
import type { CorrectionsPage } from './view';

interface Props {
  readonly page: CorrectionsPage;
  readonly pasted: readonly PastedNumber[];
}

/** The description that was pasted here, which viewers may have read, and what of it is another number now. */
export function PastedPart({ page: { episodeId, today }, pasted }: Props) {
  const text = correctionFoot(pasted, { reason: '', on: today });
  return (
    <section aria-labelledby="pasted">
      <h2 id="pasted">The description that you pasted</h2>
      <p className="mt-1 mb-2 max-w-[70ch]">
        If this episode is out, that text stands under it.{' '}
        {pasted.length === 0
          ? 'None of its calories and macros is surely off by your breakdown.'
          : 'These of its numbers are off by your breakdown, and surely of what they are said:'}{' '}
        <Link className="link" href={`/episodes/${episodeId}/edit`}>
          All that it says
        </Link>
      </p>
      {pasted.length > 0 && (
        <>
          <NumberChanges
            caption="Numbers of the pasted description"
            numbers={pasted}
            workingOf={episodeId}
          />
          <p id="pasted-foot" className="mt-4 mb-2 border-l-[3px] border-ink bg-raised px-3 py-2">
            {text}
          </p>
          <CopyButton text={text} label="Copy this correction" shownIn="pasted-foot" tone="plain" />
          <p className="mt-2 text-fine text-soft">
            For the foot of that description, as of {dayWords(today)}. It is not kept as a
            correction: no lock stands behind the old numbers. Add why they are others.
          </p>
        </>
      )}
    </section>
  );
}
