import { Balance } from '../../../_ui/balance';
import { FigureList, FigureView } from '../../../_ui/figure-view';
import type { BalanceState } from '../../../_ui/geometry';
import type { Target } from '#lib/episode/schema';
import type { Figures } from '#lib/figures/episode-figures';
import { judgeLimit, type LimitVerdict } from '#lib/figures/judge-limit';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { DayAnswerForm } from './day-answer-form';
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
              return <FigureView key={nutrient} figure={figure} published={published} />;
            })}
          </FigureList>
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

const STATES: Readonly<Record<LimitVerdict, BalanceState>> = {
  met: 'agrees',
  cannotTell: 'edge',
  missed: 'off',
  unknown: 'unknown',
};

const WORDS: Readonly<Record<LimitVerdict, string>> = {
  met: 'met',
  cannotTell: 'cannot tell: the range crosses it',
  missed: 'missed',
  unknown: 'can’t say: the number is open',
};

function Targets({ view }: { readonly view: EpisodeView }) {
  const { targets } = view.file.episode;
  if (targets.length === 0) return null;
  return (
    <section aria-labelledby="targets" className="mt-8">
      <h3 id="targets">Targets</h3>
      <ul className="mt-1">
        {targets.map((target) => {
          const figure = figuresFor(view, target)?.[target.nutrient];
          const verdict = figure ? judgeLimit(figure, target.relation, target.amount) : 'unknown';
          return (
            <li
              key={target.id}
              className="flex flex-wrap items-center justify-between gap-x-6 border-b border-line py-1.5"
            >
              <span>{targetWords(view, target)}</span>
              <Balance
                verdict={STATES[verdict]}
                words={WORDS[verdict]}
                heavier={target.relation === 'atMost' ? 'breakdown' : 'said'}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function figuresFor(view: EpisodeView, target: Target): Figures | undefined {
  if (target.segmentId === null) return view.figures.day;
  return view.figures.dishes.find((dish) => dish.segmentId === target.segmentId)?.whole;
}

function targetWords(view: EpisodeView, { segmentId, relation, amount, nutrient }: Target): string {
  const { unit, label } = NUTRIENTS[nutrient];
  const segment = view.file.episode.segments.find((each) => each.id === segmentId);
  const scope = segment ? segment.title : 'all dishes';
  return `${scope}: ${relation === 'atLeast' ? 'at least' : 'at most'} ${amount} ${unit} ${label}`;
}
