import Link from 'next/link';
import { DESCRIPTION_FORMS, type DescriptionForm } from '#lib/episode/publish-schema';
import type { Description } from '#lib/publish/description';
import { PART_WORDS } from '#lib/publish/description/change-layout';
import type { Droppable } from '#lib/publish/description/what-to-drop';
import { lockWords } from '#lib/publish/lock-words';
import { printCount } from '#lib/units/print';
import { PastedText } from '../../../../_ui/pasted-text';
import { WrittenStep } from '../../_components/written-step';
import { LOCK_ID } from '../lock-href';
import { CopyAndLock } from './copy-and-lock';
import { LayoutPart } from './layout-part';
import { lengthWords } from './length-words';
import { revOf, toldOf, type PublishPage } from './view';

const TEXT = 'description-text';

export const FORM_WORDS: Readonly<Record<DescriptionForm, string>> = {
  plain: 'Plain text',
  markdown: 'Markdown',
  html: 'HTML',
};

/** The text exactly as it is pasted, in the form that is wanted, and what it is long. */
export function DescriptionPart({ page }: { readonly page: PublishPage }) {
  const { episode } = page.file;
  const { text, form, without, length, limit, fits, drops } = page.description;
  const used = `${printCount(length.codePoints)} of ${printCount(limit)}`;
  return (
    <section aria-labelledby="description" className="min-w-0">
      <h2 id="description">Description, as it will be pasted</h2>
      <FormSwitch episodeId={episode.id} form={form} without={without} />
      <div className="mt-3">
        <CopyAndLock
          episodeId={episode.id}
          text={text}
          form={form}
          without={without.join(',')}
          shownIn={TEXT}
          label={`Copy, ${used}`}
        />
      </div>
      <WrittenStep episode={episode} rev={revOf(page, episode.id)} />
      <Standing page={page} />
      <p className={`text-fine ${fits ? 'text-soft' : 'font-semibold text-hand'}`}>
        {fits ? '' : 'Too long. '}
        {lengthWords(length, limit)}
      </p>
      {(drops.length > 0 || without.length > 0) && (
        <Drops episodeId={episode.id} description={page.description} />
      )}
      <div className="mt-4">
        <PastedText id={TEXT} text={text} />
      </div>
      <LayoutPart episodeId={episode.id} layout={page.layout} />
    </section>
  );
}

function href(episodeId: string, form: DescriptionForm, without: readonly Droppable[]): string {
  const asked = [
    ...(form === 'plain' ? [] : [`form=${form}`]),
    ...(without.length === 0 ? [] : [`without=${without.join(',')}`]),
  ];
  const query = asked.length === 0 ? '' : `?${asked.join('&')}`;
  return `/episodes/${episodeId}/publish${query}`;
}

type SwitchProps = Pick<Description, 'form' | 'without'> & { readonly episodeId: string };

function FormSwitch({ episodeId, form, without }: SwitchProps) {
  return (
    <nav aria-label="Form of the description" className="mt-2 print:hidden">
      <ul className="flex flex-wrap gap-x-6">
        {DESCRIPTION_FORMS.map((each) => (
          <li key={each}>
            <Link
              className={`link inline-flex min-h-11 items-center ${each === form ? 'font-semibold' : ''}`}
              aria-current={each === form ? 'true' : undefined}
              href={href(episodeId, each, without)}
              scroll={false}
            >
              {FORM_WORDS[each]}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** What to leave out of this one text, what is missed least first; the house layout stays as it is. */
function Drops(props: { readonly episodeId: string; readonly description: Description }) {
  const { form, without, drops, limit } = props.description;
  const needed = drops.filter((drop) => drop.needed);
  const last = needed.at(-1);
  const all = [...without, ...needed.map(({ part }) => part)];
  return (
    <div className="mt-2 border-l-[3px] border-line pl-3 print:hidden">
      {last && (
        <p>
          Leave out first: {needed.map(({ part }) => PART_WORDS[part].toLowerCase()).join(', ')}.
          Then it has {printCount(last.left)} of {printCount(limit)}.{' '}
          <Link className="link" href={href(props.episodeId, form, all)} scroll={false}>
            Leave out of this text
          </Link>
        </p>
      )}
      {drops.length > 0 && (
        <details>
          <summary className="link min-h-11 content-center">What each part takes</summary>
          <ul>
            {drops.map(({ part, saves }) => (
              <li key={part}>
                <Link
                  className="link inline-flex min-h-8 items-center"
                  href={href(props.episodeId, form, [...without, part])}
                  scroll={false}
                >
                  Without {PART_WORDS[part].toLowerCase()}
                </Link>
                : {printCount(saves)} less
              </li>
            ))}
          </ul>
        </details>
      )}
      {without.length > 0 && (
        <p>
          Left out of this text: {without.map((part) => PART_WORDS[part].toLowerCase()).join(', ')}.{' '}
          <Link className="link" href={href(props.episodeId, form, [])} scroll={false}>
            Put back
          </Link>
        </p>
      )}
    </div>
  );
}

/** How its numbers stand to the lock; why it is broken is told beside the text. */
function Standing({ page }: { readonly page: PublishPage }) {
  const told = toldOf(page);
  return (
    <p className="mt-2">
      {lockWords({ ...told, reason: null })}
      {told.standing !== 'locked' && !told.ofLock && (
        <span className="print:hidden"> Copying locks them.</span>
      )}
      {told.standing === 'broken' && (
        <>
          {' '}
          <a className="link print:hidden" href={`#${LOCK_ID}`}>
            See what changed
          </a>
        </>
      )}
    </p>
  );
}
