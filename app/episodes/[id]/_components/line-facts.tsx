import { amountApart } from '#lib/episode/amount-apart';
import { amountContext } from '#lib/episode/context';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import type { LineFigures } from '#lib/figures/episode-figures';
import { statesId, statesWords } from './states-part';
import type { EpisodeView } from './view';
import { cookedWords, leftWords, waitingWords, weighedWords } from './weighed-words';

interface Props {
  readonly view: EpisodeView;
  readonly recipe: Recipe;
  readonly line: RecipeLine;
}

/**
 * What was weighed of an ingredient, raw, cooked and left behind, each in a line of its own, and where its words name
 * another amount than is counted.
 */
export function LineFacts({ view, recipe, line }: Props) {
  const apart = amountApart(line, recipe.weighings, amountContext(view.file));
  const facts = [
    weighedWords(recipe, line.id, view.file.kitchen),
    cookedWords(view.file, recipe, line),
    leftWords(recipe, line),
    waitingWords(recipe, line.id),
  ].filter((fact) => fact !== null);
  return (
    <>
      {apart && (
        <b className="block font-semibold">
          its words say {apart.said}, counted is {apart.counted}: change one of them
        </b>
      )}
      {facts.map((fact) => (
        <span key={fact} className="block">
          {fact}
        </span>
      ))}
    </>
  );
}

type Gap = NonNullable<LineFigures['gap']>;

/** What an open ingredient asks for. */
const GAPS: Readonly<Record<Exclude<Gap, 'states'>, string>> = {
  noFood: 'open: choose a food',
  noGrams: 'open: say grams',
  leftBehind: 'open: more is left behind than there was',
};

/** Why an ingredient is open; where two states differ, both, and the way to what settles it. */
export function GapText({ view, line, gap }: Pick<Props, 'view' | 'line'> & { readonly gap: Gap }) {
  if (gap !== 'states') return GAPS[gap];
  return (
    <>
      open: {statesWords(view, line)}, and no cooked weight is known.{' '}
      {/* One that waits for its food to be confirmed has no ways out yet. */}
      {line.match === 'confirmed' && (
        <a className="link font-normal print:hidden" href={`#${statesId(line.id)}`}>
          Settle it<span className="unseen"> for {line.text}</span>
        </a>
      )}
    </>
  );
}
