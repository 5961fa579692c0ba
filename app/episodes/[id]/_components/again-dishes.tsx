import { ButtonForm } from '../../../_forms/button-form';
import { Button } from '../../../_ui/button';
import { CONTROL } from '../../../_ui/form/field';
import { dayWithYear } from '#lib/episode/again-labels';
import type { DishToCopy } from '#lib/store/read-again';
import type { AgainView } from '../again';
import { addAgain } from '../again-actions';

interface Props {
  readonly episodeId: string;
  readonly again: AgainView;
}

/** Dishes of all episodes, the latest first: one press adds one as it begins anew. */
export function AgainDishes({ episodeId, again: { dishes, words } }: Props) {
  const mayLook = dishes.more || words !== null;
  return (
    <div className="pb-5">
      <p className="max-w-[62ch] text-soft">
        With its foods, steps and shots, and with what was weighed last as what is planned.
      </p>
      {mayLook && (
        <form
          action={`/episodes/${episodeId}#again`}
          method="get"
          role="search"
          className="mt-3 flex max-w-xl gap-2"
        >
          <label htmlFor="again-words" className="unseen">
            Words of the dish or its episode
          </label>
          <input
            id="again-words"
            name="again"
            type="search"
            defaultValue={words ?? ''}
            placeholder="barley skillet"
            className={CONTROL}
          />
          <span className="shrink-0">
            <Button>Look for it</Button>
          </span>
        </form>
      )}
      <ul className="mt-3 border-t border-line" aria-label="Dishes to begin from">
        {dishes.dishes.map((dish) => (
          <DishRow key={dish.segmentId} episodeId={episodeId} dish={dish} />
        ))}
      </ul>
      {dishes.dishes.length === 0 && (
        <p className="mt-2 text-soft">Nothing fits “{words}”. Try fewer words.</p>
      )}
      {dishes.more && (
        <p className="mt-2 text-fine text-soft">There are more: look for one by its words.</p>
      )}
    </div>
  );
}

function DishRow({ episodeId, dish }: { readonly episodeId: string; readonly dish: DishToCopy }) {
  const { segmentId, title, episodeTitle, date, weighed } = dish;
  const on = date === null ? 'no date yet' : dayWithYear(date);
  const values = { episodeId, segmentId };
  const named = `${title} (${episodeTitle}, ${on})`;
  return (
    <li className="flex flex-wrap items-center justify-between gap-x-6 gap-y-1 border-b border-line py-2">
      <span className="min-w-0 flex-1 basis-56">
        <span className="block font-semibold wrap-anywhere">{title}</span>
        <span className="block text-fine text-soft wrap-anywhere">
          {episodeTitle} · {on}
        </span>
      </span>
      <span className="ml-auto flex items-center gap-4">
        {weighed && (
          <ButtonForm
            action={addAgain}
            values={{ ...values, amounts: 'planned' }}
            label={`As planned, again, from ${named}`}
          >
            As planned
          </ButtonForm>
        )}
        <ButtonForm
          action={addAgain}
          values={{ ...values, amounts: 'weighed' }}
          tone="plain"
          label={`Add again, from ${named}`}
        >
          Add
        </ButtonForm>
      </span>
    </li>
  );
}
