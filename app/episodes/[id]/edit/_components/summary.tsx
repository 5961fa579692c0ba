import { EmptyState } from '../../../../_ui/empty-state';
import type { EditPage } from './view';

/** What the page found, in one or two sentences. */
export function Summary({ page }: { readonly page: EditPage }) {
  const { counts, texts, contradictions, named } = page;
  if (counts.all === 0 && texts.length === 0) {
    return (
      <EmptyState title="Nothing to hold against the numbers yet">
        Bring in the captions or a transcript of the edit, or the description of an episode that is
        already out. Every number said in them is then held against your breakdown.
      </EmptyState>
    );
  }
  const open = named.filter(({ answer }) => answer === null).length;
  const parts = [
    said(counts.off, 'is off', 'are off'),
    said(counts.edge, 'is at the edge', 'are at the edge'),
    said(counts.agrees, 'agrees with your breakdown', 'agree with your breakdown'),
    said(counts.unknown, 'can’t be held against anything', 'can’t be held against anything'),
    said(counts.aside, 'is put aside', 'are put aside'),
  ].filter((words) => words !== null);
  return (
    <div className="mb-8 max-w-[70ch]">
      <p className="text-lead">
        {counts.all === 0
          ? 'No number was found in the texts.'
          : `${counts.all === 1 ? 'One statement' : `${counts.all} statements`}: ${parts.join(', ')}.`}
      </p>
      {counts.all > 0 && (
        <p className="mt-1 flex flex-wrap gap-x-5 print:hidden">
          {contradictions.length > 0 && (
            <a className="link" href="#contradictions">
              {contradictions.length === 1
                ? 'One contradiction'
                : `${contradictions.length} contradictions`}
            </a>
          )}
          {open > 0 && (
            <a className="link" href="#named">
              {open === 1 ? 'One food' : `${open} foods`} named, not counted
            </a>
          )}
          <a className="link" href="#texts">
            Bring a text in
          </a>
        </p>
      )}
    </div>
  );
}

function said(count: number, one: string, more: string): string | null {
  if (count === 0) return null;
  return `${count} ${count === 1 ? one : more}`;
}
