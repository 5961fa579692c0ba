import type { ChangedLine } from '#lib/publish/changed-lines';
import type { DescriptionForm } from '#lib/episode/publish-schema';
import { PastedText } from '../../../../_ui/pasted-text';
import { PART_WORDS } from '#lib/publish/description/change-layout';
import type { Droppable } from '#lib/publish/description/what-to-drop';
import { FORM_WORDS } from './description-part';

/** A text that was copied, with the lock whose numbers it has. */
export interface Copied {
  readonly id: string;
  /** The moment as read: "Sat 12 Dec, 18:02". */
  readonly at: string;
  readonly form: DescriptionForm;
  /** The lock's number among those of the episode. */
  readonly seq: number;
  /** That lock came with a zip and holds nothing here. */
  readonly historyOnly: boolean;
  readonly text: string;
  /** What the same text would be now says otherwise. */
  readonly since: readonly ChangedLine[];
  /** Left out of the text of now, since the copy was made without. */
  readonly without: readonly Droppable[];
}

/** Each text that was copied, the newest first, and in what it differs from the one of now. */
export function HistoryPart({ copied }: { readonly copied: readonly Copied[] }) {
  if (copied.length === 0) return null;
  return (
    <section aria-labelledby="copied" className="mt-10">
      <h2 id="copied">Copied so far</h2>
      <ul className="mt-2">
        {copied.map(({ id, at, form, seq, historyOnly, text, since, without }) => (
          <li key={id} className="border-b border-line">
            <details>
              <summary className="link min-h-11 content-center">
                {at}, {FORM_WORDS[form]}, lock {seq}
                {historyOnly && ', history only'}
                {since.length === 0 ? '' : ': other words now'}
              </summary>
              {without.length > 0 && (
                <p className="mb-2 text-fine text-soft">
                  It has no {without.map((part) => PART_WORDS[part].toLowerCase()).join(', ')}, so
                  it is compared with the text of now without.
                </p>
              )}
              {since.length > 0 && <Since since={since} />}
              <div className="mb-3">
                <PastedText text={text} />
              </div>
            </details>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Since({ since }: { readonly since: readonly ChangedLine[] }) {
  return (
    <ul className="mb-3 text-fine" aria-label="What is otherwise now">
      {since.map(({ side, text }, index) => (
        <li key={`${index} ${text}`} className="wrap-anywhere">
          <span className="lettering text-soft">{side}</span> {text}
        </li>
      ))}
    </ul>
  );
}
