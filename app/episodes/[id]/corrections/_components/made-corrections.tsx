import Link from 'next/link';
import { dayWords } from '#lib/publish/correction/correction-words';
import { CopyButton } from '../../../../_ui/copy-button';
import { NumberChanges } from './number-changes';
import type { MadeCorrection } from './view';

/** A correction that was made: its two texts, each to be copied, and the numbers it stands for. */
export function MadeCorrectionPart({
  of,
  lead,
  episodeId,
  isNow,
}: {
  readonly of: MadeCorrection;
  /** The newest one. */
  readonly lead: boolean;
  readonly episodeId: string;
  /** Whether its numbers are those of now. */
  readonly isNow: boolean;
}) {
  const [before, after] = of.seqs;
  return (
    <li className="border-b border-line py-4">
      <h3>
        {dayWords(of.on)}{' '}
        <span className="font-normal text-soft">
          lock {before} to lock {after}
          {of.historyOnly && ', history only'}
        </span>
      </h3>
      <p className="mt-1 max-w-[70ch]">{of.reason}</p>
      <div className="mt-3 grid grid-cols-1 gap-x-10 gap-y-5 lg:grid-cols-2">
        <TextToCopy
          id={`foot-${of.id}`}
          name="For the description’s foot"
          text={of.foot}
          copy="Copy the correction"
          lead={lead}
        />
        <TextToCopy
          id={`reply-${of.id}`}
          name="As a reply"
          text={of.reply}
          copy="Copy the reply"
          lead={false}
        />
      </div>
      {lead && of.numbers.length > 0 && (
        <p className="mt-3 print:hidden">
          <Link
            className="link inline-flex min-h-11 items-center"
            href={`/episodes/${episodeId}/cards`}
          >
            Its cards
          </Link>
        </p>
      )}
      {of.numbers.length === 0 ? (
        <p className="mt-3 text-soft">
          Its locks were taken by another version of the program and cannot be read here.
        </p>
      ) : (
        <details className="mt-3 print:hidden">
          <summary className="link min-h-11 content-center">
            Its numbers, old and new: {of.numbers.length}
          </summary>
          <NumberChanges
            caption={`Numbers corrected on ${dayWords(of.on)}`}
            numbers={of.numbers}
            workingOf={isNow ? episodeId : null}
          />
        </details>
      )}
    </li>
  );
}

interface TextProps {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  /** What its button says. */
  readonly copy: string;
  readonly lead: boolean;
}

function TextToCopy({ id, name, text, copy, lead }: TextProps) {
  return (
    <div className="min-w-0">
      <h4 className="font-semibold">{name}</h4>
      <p
        id={id}
        className="mt-1 mb-2 border-l-[3px] border-ink bg-raised px-3 py-2 break-words whitespace-pre-wrap"
      >
        {text}
      </p>
      <CopyButton text={text} label={copy} shownIn={id} tone={lead ? 'go' : 'plain'} />
    </div>
  );
}
