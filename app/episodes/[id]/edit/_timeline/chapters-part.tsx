import { chapterLines, chapterList, chapterParts } from '#lib/cut/chapters';
import { cutMends } from '#lib/cut/cut-mends';
import { ButtonForm } from '../../../../_forms/button-form';
import { CopyButton } from '../../../../_ui/copy-button';
import { ownChapter, takeMend } from './actions';
import type { TimelineView } from './read-timeline';

/** The chapters as they would be pasted, the rules that they break, and ways to mend them. */
export function ChaptersPart({ timeline }: { readonly timeline: TimelineView }) {
  const { file, points } = timeline;
  const { chapters, faults } = chapterList(file.episode);
  const { id: episodeId } = file.episode;
  const joined = chapterParts(points).flatMap((parts) => parts.slice(1));
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
            {mends.map(({ words }) => (
              <li key={words}>
                <ButtonForm action={takeMend} values={{ episodeId, words }} tone="plain">
                  {words}
                </ButtonForm>
              </li>
            ))}
          </ul>
        </div>
      )}
      {joined.length > 0 && (
        <div className="print:hidden">
          <h3 className="mt-4">Joined with the chapter before</h3>
          <ul className="mt-1 grid gap-2">
            {joined.map(({ id, title }) => (
              <li key={id}>
                <ButtonForm
                  action={ownChapter}
                  values={{ episodeId, segmentId: id }}
                  tone="plain"
                >{`let “${title}” be its own chapter again`}</ButtonForm>
              </li>
            ))}
          </ul>
        </div>
      )}
    </section>
  );
}
