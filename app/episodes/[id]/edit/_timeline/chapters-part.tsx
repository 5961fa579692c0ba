import { chapterLines, chapterList } from '#lib/cut/chapters';
import { cutMends, type CutMend } from '#lib/cut/cut-mends';
import { ButtonForm } from '../../../../_forms/button-form';
import { CopyButton } from '../../../../_ui/copy-button';
import { Disclosure } from '../../../../_ui/disclosure';
import { takeMend } from './actions';
import type { TimelineView } from './read-timeline';

/** The chapters as they would be pasted, the rules that they break, and ways to mend them. */
export function ChaptersPart({ timeline }: { readonly timeline: TimelineView }) {
  const { file, points } = timeline;
  const { chapters, faults } = chapterList(file.episode);
  const mends = cutMends(points, file.episode.rate);
  const lines = chapterLines(chapters).join('\n');
  return (
    <section aria-labelledby="chapters" className="mt-12">
      <h2 id="chapters">Chapters</h2>
      {chapters.length > 0 && (
        <>
          <pre id="chapter-lines" className="mt-2 mb-3 font-sans whitespace-pre-wrap">
            {lines}
          </pre>
          <CopyButton text={lines} label="Copy the chapters" shownIn="chapter-lines" tone="plain" />
        </>
      )}
      {faults.length === 0 ? (
        <p className="mt-3">
          They keep the rules of chapter lists in a description: first at 0:00, at least three, in
          order, ten seconds or more each.
        </p>
      ) : (
        <>
          <h3 className="mt-4">Rules that this breaks</h3>
          <ul className="mt-1">
            {faults.map(({ rule, message }) => (
              <li key={`${rule} ${message}`} className="mb-1 text-hand">
                {message}
              </li>
            ))}
          </ul>
        </>
      )}
      {mends.length > 0 && (
        <div className="print:hidden">
          <h3 className="mt-4">What would mend it</h3>
          <ul className="mt-1 grid gap-2">
            {mends.map((mend) => (
              <li key={mend.words}>
                <Mend episodeId={file.episode.id} mend={mend} />
              </li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}

function Mend({
  episodeId,
  mend: { words, takes },
}: {
  readonly episodeId: string;
  readonly mend: CutMend;
}) {
  if (takes.kind !== 'list') {
    return (
      <ButtonForm action={takeMend} values={{ episodeId, words }} tone="plain">
        {words}
      </ButtonForm>
    );
  }
  const lines = takes.lines.join('\n');
  const id = `joined-${takes.lines.length}-${words.length}`;
  return (
    <Disclosure words={`${words}, in the list alone`}>
      <p className="max-w-[70ch] text-fine text-soft">
        The running order keeps both segments, and files and description their own lines; this list
        is here to be copied.
      </p>
      <pre id={id} className="mt-1 mb-2 font-sans whitespace-pre-wrap">
        {lines}
      </pre>
      <CopyButton text={lines} label="Copy this list" shownIn={id} tone="plain" />
    </Disclosure>
  );
}
