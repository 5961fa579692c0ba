import { ButtonForm } from '../../../../_forms/button-form';
import { ButtonLink } from '../../../../_ui/button';
import { PIN_CHOICES } from '#lib/shoot/pins';
import { pinStep } from '../times-actions';
import { dayHref, pinHref, type DayPage } from './view';

/** What it costs to tie a step to a clock time, before it is done. */
export function PinOffer({ page }: { readonly page: DayPage }) {
  const { tried } = page;
  if (tried === null) return null;
  const { pin, cost } = tried;
  const episodeId = page.file.episode.id;
  const others = PIN_CHOICES.filter(({ value }) => value !== pin.when);
  return (
    <section
      id="pinned"
      aria-labelledby="pinned-head"
      tabIndex={-1}
      className="mb-6 border-l-[6px] border-hand pl-4"
    >
      <h3 id="pinned-head" className="text-lead">
        {cost.pin}?
      </h3>
      {cost.words.map((words) => (
        <p key={words}>{words}</p>
      ))}
      <div className="mt-3 flex flex-wrap items-center gap-3">
        <ButtonForm
          action={pinStep}
          values={{ episodeId, dayId: page.day.id, ...pin }}
          tone={cost.canBeKept ? 'go' : 'hand'}
          size="usual"
        >
          {cost.canBeKept ? 'Tie it to this time' : 'Tie it all the same'}
        </ButtonForm>
        {others.map(({ value, words }) => (
          <ButtonLink key={value} href={pinHref(page, { ...pin, when: value })}>
            What about {words}?
          </ButtonLink>
        ))}
        <ButtonLink href={dayHref(page, '#order')}>Leave it as it is</ButtonLink>
      </div>
    </section>
  );
}
