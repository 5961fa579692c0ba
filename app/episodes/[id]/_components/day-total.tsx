import { FigureList, FigureView } from '../../../_ui/figure-view';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { breakdownHref } from '../breakdown/href';
import { DayAnswerForm } from './day-answer-form';
import { EnergyNote } from './dish-remarks';
import { Picture } from './picture';
import { Targets } from './targets';
import { revOf, type EpisodeView } from './view';

/** The sum over the dishes as eaten; it is called the day only once nothing else was eaten. */
export function DayTotal({ view }: { readonly view: EpisodeView }) {
  const { episode } = view.file;
  const { anythingElse } = episode;
  return (
    <section aria-labelledby="day-total" className="mt-14 border-t-[1.5px] border-ink pt-4">
      <h2 id="day-total">{view.figures.dayIsWhole ? 'The day' : 'The dishes shown'}</h2>
      <div className="mt-4 grid gap-9 lg:grid-cols-[minmax(0,1.9fr)_minmax(0,1fr)] lg:gap-x-12">
        <div>
          <FigureList>
            {HEADLINE_NUTRIENTS.map((nutrient) => {
              const figure = view.figures.day[nutrient];
              if (!figure) return null;
              const published = view.numbers(nutrient, { kind: 'day' });
              return (
                <FigureView
                  key={nutrient}
                  figure={figure}
                  published={published}
                  href={breakdownHref(episode.id, { kind: 'day' }, nutrient)}
                  size={nutrient === HEADLINE_NUTRIENTS[0] ? 'lead' : 'large'}
                />
              );
            })}
          </FigureList>
          <EnergyNote view={view} scope={{ kind: 'day' }} />
          <section aria-labelledby="day-picture" className="mt-8">
            <h3 id="day-picture" className="mb-2">
              Which dishes it comes from
            </h3>
            <Picture view={view} scope={{ kind: 'day' }} underNumbers />
          </section>
          <Targets view={view} />
        </div>
        <DayAnswerForm
          episodeId={episode.id}
          rev={revOf(view, episode.id)}
          kind={anythingElse?.kind ?? ''}
          what={anythingElse?.kind === 'notCounted' ? anythingElse.what : ''}
        />
      </div>
    </section>
  );
}
