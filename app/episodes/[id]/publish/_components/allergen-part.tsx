import { ButtonForm } from '../../../../_forms/button-form';
import {
  allergenAnswers,
  allergenQuestions,
  type AllergenAnswer,
  type AllergenQuestion,
} from '#lib/publish/allergen-questions';
import { answerAllergen, askAgain } from '../actions';
import { revOf, type PublishPage } from './view';

/** Allergens that a rule proposes, for the person to confirm or deny, and what was said so far. */
export function AllergenPart({ page }: { readonly page: PublishPage }) {
  const questions = allergenQuestions(page.file);
  const answers = allergenAnswers(page.file);
  if (questions.length === 0 && answers.length === 0) return null;
  return (
    <section aria-labelledby="allergens" className="mt-10">
      <h2 id="allergens">Allergens to confirm</h2>
      <p className="mt-1 max-w-[70ch] text-soft">
        A rule proposes these. None is published before you say so; look at the label of what you
        used.
      </p>
      <ul className="mt-2">
        {questions.map((question) => (
          <Question key={`${question.foodId} ${question.allergen}`} page={page} {...question} />
        ))}
        {questions.length === 0 && <li className="py-2">Nothing waits for your word.</li>}
      </ul>
      {answers.length > 0 && (
        <details className="mt-2">
          <summary className="link min-h-11 content-center">What you have said so far</summary>
          <ul>
            {answers.map((answer) => (
              <Answer key={answer.factId} page={page} {...answer} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

type PageProps = { readonly page: PublishPage };

function Question({ page, foodId, food, allergen, words, reason }: PageProps & AllergenQuestion) {
  const values = { episodeId: page.file.episode.id, foodId, allergen };
  return (
    <li className="flex flex-wrap items-center justify-between gap-x-6 gap-y-2 border-b border-line py-2">
      <span>
        <b className="font-semibold">{words}</b> in {food}?
        <span className="block text-fine text-soft">proposed since {reason}</span>
      </span>
      <span className="flex flex-wrap gap-3">
        <ButtonForm
          action={answerAllergen}
          values={{ ...values, standing: 'confirmed' }}
          label={`Confirm ${words} in ${food}`}
          tone="plain"
          size="usual"
        >
          Confirm
        </ButtonForm>
        <ButtonForm
          action={answerAllergen}
          values={{ ...values, standing: 'denied' }}
          label={`Not in it: no ${words} in ${food}`}
          tone="plain"
          size="usual"
        >
          Not in it
        </ButtonForm>
      </span>
    </li>
  );
}

function Answer({ page, factId, food, words, standing }: PageProps & AllergenAnswer) {
  return (
    <li className="flex flex-wrap items-center justify-between gap-4 border-b border-line py-1">
      <span>
        {words} in {food}: {standing === 'confirmed' ? 'confirmed' : 'not in it'}
      </span>
      <ButtonForm
        action={askAgain}
        values={{ episodeId: page.file.episode.id, factId, rev: revOf(page, factId) }}
        label={`Ask again about ${words} in ${food}`}
      >
        Ask again
      </ButtonForm>
    </li>
  );
}
