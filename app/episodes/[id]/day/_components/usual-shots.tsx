import Link from 'next/link';
import { ButtonForm } from '../../../../_forms/button-form';
import type { Segment } from '#lib/episode/schema';
import { houseShotsToAdd } from '#lib/shoot/house-shots';
import { addHouseShots } from '../house-shot-actions';
import type { DayPage } from './view';

interface Props {
  readonly page: DayPage;
}

/** Adds the shots of every dish to one dish, each at its step; nothing where it has them all, or no step yet. */
export function UsualShots({ page, segment }: Props & { readonly segment: Segment }) {
  const { episode, kitchen } = page.file;
  const shots = houseShotsToAdd(segment, kitchen.houseShots);
  if (shots.length === 0 || segment.steps.length === 0) return null;
  return (
    <div className="my-3">
      <ButtonForm
        action={addHouseShots}
        values={{ episodeId: episode.id, segmentId: segment.id }}
        label={`Add your usual shots to ${segment.title}: ${shots.length}`}
        tone="plain"
        size="usual"
      >
        Add your usual shots: {shots.length}
      </ButtonForm>{' '}
      <span className="text-fine text-soft">{shots.map(({ title }) => title).join(', ')}</span>
    </div>
  );
}

/** The same for all dishes at once; where the kitchen has no such list yet, where to make one. */
export function UsualShotsOfAll({ page }: Props) {
  const { episode, kitchen } = page.file;
  const dishes = episode.segments.filter(
    ({ steps, kind }) => kind === 'recipe' && steps.length > 0,
  );
  const lacking = dishes.filter((dish) => houseShotsToAdd(dish, kitchen.houseShots).length > 0);
  if (dishes.length > 0 && kitchen.houseShots.length === 0) {
    return (
      <p className="text-fine text-soft">
        The shots that you get of every dish are written down once, in{' '}
        <Link href="/kitchen#house-shots" className="link">
          the kitchen
        </Link>
        .
      </p>
    );
  }
  const [only] = lacking;
  if (!only) return null;
  return (
    <div className="mt-2">
      <ButtonForm
        action={addHouseShots}
        values={{ episodeId: episode.id }}
        tone="plain"
        size="usual"
      >
        Add your usual shots to {lacking.length === 1 ? only.title : `all ${lacking.length} dishes`}
      </ButtonForm>
    </div>
  );
}
