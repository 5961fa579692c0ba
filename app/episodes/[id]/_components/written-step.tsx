import { ButtonForm } from '../../../_forms/button-form';
import { ENERGY_STEPS, type Episode } from '#lib/episode/schema';
import { writeCaloriesTo } from '../written-step-actions';

interface Props {
  readonly episode: Pick<Episode, 'id' | 'energyStep'>;
  readonly rev: number;
}

/** What calories are rounded to where they are shown and copied; all that is copied still adds up. */
export function WrittenStep({ episode, rev }: Props) {
  const current = episode.energyStep;
  return (
    <div
      role="group"
      aria-label="Calories written"
      className="mt-3 flex flex-wrap gap-x-4 text-fine print:hidden"
    >
      <span className="content-center text-soft">Calories written</span>
      {ENERGY_STEPS.map((step) => {
        const words = step === 1 ? 'to 1 kcal' : `to ${step}`;
        return step === current ? (
          <b key={step} className="inline-flex min-h-8 items-center" aria-current="true">
            {words}
          </b>
        ) : (
          <span key={step} className="inline-flex min-h-8 items-center">
            <ButtonForm
              action={writeCaloriesTo}
              values={{ episodeId: episode.id, rev, energyStep: step }}
              label={`Write calories to ${step} kcal`}
            >
              {words}
            </ButtonForm>
          </span>
        );
      })}
    </div>
  );
}
