import Link from 'next/link';
import type { StructuredData } from '#lib/publish/structured/structured-data';
import { ButtonLink } from '../../../../_ui/button';
import { CopyButton } from '../../../../_ui/copy-button';
import { Disclosure } from '../../../../_ui/disclosure';
import { ScrollRegion } from '../../../../_ui/scroll-region';

interface Props {
  readonly episodeId: string;
  readonly data: Pick<StructuredData, 'script' | 'left'>;
}

const SHOWN = 'structured-data-text';

/** The episode as data for machines, exactly as it is copied, and what is not in it. */
export function StructuredPart({ episodeId, data }: Props) {
  const { script, left } = data;
  return (
    <section aria-label="Structured data" className="mt-6 print:hidden">
      <Disclosure words="Structured data, for a page of your own" large>
        <p className="max-w-[60ch]">
          The dishes as recipes with the nutrition of a portion, and the video with its chapters, in
          the words of schema.org. Paste it into the page that shows the video. A time is in it
          where the steps and their ties leave no doubt.
        </p>
        <div className="mt-3 flex flex-wrap items-center gap-4">
          <CopyButton text={script} label="Copy for a page" shownIn={SHOWN} />
          <ButtonLink href={`/episodes/${episodeId}/publish/structured-data.jsonld`} download>
            Download as JSON-LD
          </ButtonLink>
        </div>
        {left.length > 0 && (
          <>
            <h3 className="mt-5">Left out</h3>
            <ul className="mt-1 max-w-3xl border-t border-line">
              {left.map(({ segmentId, dish, what, why }, at) => (
                <li key={at} className="border-b border-line py-1.5">
                  <b className="font-semibold">
                    {dish}, {what}
                  </b>
                  : {why}.
                  {segmentId !== null && (
                    <>
                      {' '}
                      <Link className="link" href={`/episodes/${episodeId}#row-${segmentId}`}>
                        To the dish<span className="unseen">: {what}</span>
                      </Link>
                    </>
                  )}
                </li>
              ))}
            </ul>
          </>
        )}
        <div className="mt-5">
          <ScrollRegion label="Structured data, as it is copied">
            <pre
              id={SHOWN}
              className="border border-line bg-raised px-4 py-3 text-fine whitespace-pre-wrap wrap-anywhere"
            >
              {script}
            </pre>
          </ScrollRegion>
        </div>
      </Disclosure>
    </section>
  );
}
