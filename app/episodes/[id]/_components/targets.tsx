import { ButtonForm } from '../../../_forms/button-form';
import { Balance } from '../../../_ui/balance';
import { Disclosure } from '../../../_ui/disclosure';
import { FigureText } from '../../../_ui/figure-view';
import type { Choice } from '../../../_ui/form/field';
import type { BalanceState } from '../../../_ui/geometry';
import type { Target } from '#lib/episode/schema';
import { howFar, judgeLimit, type LimitVerdict } from '#lib/figures/judge-limit';
import { verdictWords } from '#lib/figures/limit-words';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';
import { breakdownHref } from '../breakdown/href';
import { addTarget, removeTarget, saveTarget } from '../target-actions';
import { EditLink } from './edit-link';
import { OpenedHere } from './opened-here';
import { TargetForm } from './target-form';
import {
  figuresFor,
  nutrientWords,
  reachWords,
  scopeChoices,
  scopeValue,
  targetWords,
} from './target-words';
import { editHref, revOf, rowHref, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
}

const STATES: Readonly<Record<LimitVerdict, BalanceState>> = {
  met: 'agrees',
  cannotTell: 'edge',
  missed: 'off',
  unknown: 'unknown',
};

/** What the day or a dish is to keep to, each held against its figure. */
export function Targets({ view }: Props) {
  const { id: episodeId, targets } = view.file.episode;
  return (
    <section aria-labelledby="targets" className="mt-8">
      <h3 id="targets">Targets</h3>
      <ul className="mt-1">
        {targets.map((target) => (
          <li key={target.id} id={`row-${target.id}`} className="border-b border-line py-1.5">
            {view.editing === target.id ? (
              <EditTarget view={view} target={target} />
            ) : (
              <Judged view={view} target={target} />
            )}
          </li>
        ))}
      </ul>
      <Disclosure words="Add a target">
        <TargetForm
          id="new-target"
          action={addTarget}
          hidden={{ episodeId }}
          target={{ nutrient: 'protein', relation: 'atLeast', amount: '', segmentId: '' }}
          nutrients={nutrientChoices(view)}
          scopes={scopeChoices(view)}
          submit="Add the target"
        />
      </Disclosure>
    </section>
  );
}

function Judged({ view, target }: Props & { readonly target: Target }) {
  const figure = figuresFor(view, target)?.[target.nutrient];
  const verdict = figure ? judgeLimit(figure, target.relation, target.amount) : 'unknown';
  const words = targetWords(view, target);
  const reach = reachWords(target);
  const told = verdictWords(verdict, figure);
  const far = figure ? howFar(figure, target.relation, target.amount) : null;
  // Above what it is about or may be at most, the number weighs more; below, the target.
  const above = figure !== undefined && figure.value > target.amount;
  const heavier = target.relation === 'atMost' || (target.relation === 'about' && above);
  return (
    <div className="flex flex-wrap items-center justify-between gap-x-6">
      <span>
        {words}
        {reach && <span className="text-soft"> ({reach})</span>}
        {figure && (
          <>
            , now{' '}
            <FigureText
              figure={figure}
              published={view.numbers(target.nutrient, scopeOf(target))}
              href={breakdownHref(view.file.episode.id, scopeOf(target), target.nutrient)}
            />
          </>
        )}{' '}
        <EditLink href={editHref(view.file.episode.id, target.id)} what={words} />
      </span>
      <Balance
        verdict={STATES[verdict]}
        words={far === null ? told : `${told}: ${far}`}
        heavier={heavier ? 'breakdown' : 'said'}
      />
    </div>
  );
}

function scopeOf({ segmentId, portionId }: Target): NumberScope {
  if (segmentId === null) return { kind: 'day' };
  return portionId === null ? { kind: 'whole', segmentId } : { kind: 'portion', portionId };
}

function EditTarget({ view, target }: Props & { readonly target: Target }) {
  const episodeId = view.file.episode.id;
  const values = { episodeId, targetId: target.id, rev: revOf(view, target.id) };
  return (
    <OpenedHere rowId={`row-${target.id}`} closeHref={rowHref(episodeId, target.id)}>
      <TargetForm
        id={`target-${target.id}`}
        action={saveTarget}
        hidden={values}
        target={{
          nutrient: target.nutrient,
          relation: target.relation,
          amount: String(target.amount),
          segmentId: scopeValue(target),
        }}
        nutrients={nutrientChoices(view, target.nutrient)}
        scopes={scopeChoices(view, target.segmentId)}
        submit="Save the target"
        cancelHref={rowHref(episodeId, target.id)}
      />
      <div className="mt-3">
        <ButtonForm
          action={removeTarget}
          values={values}
          tone="hand"
          label={`Take out the target: ${targetWords(view, target)}`}
        >
          Take the target out
        </ButtonForm>
      </div>
    </OpenedHere>
  );
}

/** What is counted here, and net carbohydrate; a target of a file may name another, which then is kept. */
function nutrientChoices(view: EpisodeView, kept?: Nutrient): readonly Choice[] {
  const all = new Set<Nutrient>([
    ...view.figures.nutrients,
    'netCarbohydrate',
    ...(kept ? [kept] : []),
  ]);
  return [...all].map((value) => ({ value, words: nutrientWords(view, value) }));
}
