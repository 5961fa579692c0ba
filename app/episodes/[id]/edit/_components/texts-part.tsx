import { ButtonForm } from '../../../../_forms/button-form';
import { Disclosure } from '../../../../_ui/disclosure';
import { KIND_WORDS } from '#lib/overview/said-kinds';
import { RecipeWay } from '../../_components/recipe-way';
import { removeText } from '../actions';
import { DraftLink } from '../draft/_components/draft-link';
import { NewTextForm, NewerTextForm } from './text-forms';
import type { EditPage, TextRow } from './view';

/** Remarks on one text that are told; the rest are counted. */
const TOLD = 20;

/** The texts in which numbers are said, written or shown, and the way to bring more in. */
export function TextsPart({ page }: { readonly page: EditPage }) {
  const { texts, episodeId } = page;
  return (
    <section aria-labelledby="texts" className="mt-10 print:hidden">
      <h2 id="texts">Texts</h2>
      {texts.length > 0 && (
        <ul className="mt-2 max-w-4xl">
          {texts.map((text) => (
            <Text key={text.slot} episodeId={episodeId} text={text} />
          ))}
        </ul>
      )}
      {texts.length > 0 && <DraftLink episodeId={episodeId} />}
      <Disclosure words="Bring a text in" open={texts.length === 0}>
        <NewTextForm episodeId={episodeId} />
      </Disclosure>
      <RecipeWay episodeId={episodeId} />
    </section>
  );
}

function Text({ episodeId, text }: { readonly episodeId: string; readonly text: TextRow }) {
  const { id, kind, name, words, rev, remarks } = text;
  return (
    <li className="border-b border-line py-2">
      <div className="flex items-start justify-between gap-x-6 gap-y-1">
        <span className="min-w-0 wrap-anywhere">
          <b className="font-semibold">{name}</b>
          <span className="block text-fine text-soft">
            {KIND_WORDS[kind]}: {words}
          </span>
        </span>
        <ButtonForm
          action={removeText}
          values={{ episodeId, textId: id, rev }}
          label={`Take out ${name}`}
          tone="hand"
        >
          Take out
        </ButtonForm>
      </div>
      <Remarks name={name} remarks={remarks} />
      <Disclosure words={`A newer text for ${name}`}>
        <NewerTextForm episodeId={episodeId} textId={id} rev={rev} kind={kind} />
      </Disclosure>
    </li>
  );
}

function Remarks({ name, remarks }: Pick<TextRow, 'name' | 'remarks'>) {
  if (remarks.length === 0) return null;
  const skipped = remarks.filter((remark) => remark.skipped).length;
  const words =
    skipped > 0
      ? `${skipped} skipped, ${remarks.length} remarks in all`
      : `${remarks.length} remarks`;
  return (
    <details className="text-fine">
      <summary className="link min-h-8 content-center">
        {words}
        <span className="unseen"> on {name}</span>
      </summary>
      <ul className="mb-2">
        {remarks.slice(0, TOLD).map(({ line, code, message, skipped: out }) => (
          <li key={`${line} ${code}`}>
            Line {line}: {message}
            {out && ' Skipped.'}
          </li>
        ))}
        {remarks.length > TOLD && <li>And {remarks.length - TOLD} more.</li>}
      </ul>
    </details>
  );
}
