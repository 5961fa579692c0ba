'use client';

import { useSentForm } from '../../_forms/use-sent-form';
import type { StockAnswer } from '#lib/episode/stock-schema';
import { answerStock } from '../stock-actions';

const ANSWERS: readonly StockAnswer[] = ['have', 'notEnough', 'none'];

interface Props {
  readonly foodId: string;
  readonly foodName: string;
  /** What was said last; null where nobody said anything. */
  readonly answer: StockAnswer | null;
  readonly words: Readonly<Record<StockAnswer, string>>;
}

/** What there is of a food at home, in one press: all that most people keep up. */
export function StockAnswers({ foodId, foodName, answer, words }: Props) {
  const { state, pending, form } = useSentForm(answerStock);
  return (
    <form {...form} role="group" aria-label={`Stock of ${foodName}`} className="print:hidden">
      <input type="hidden" name="foodId" value={foodId} />
      <div className="grid grid-cols-3">
        {ANSWERS.map((is) => (
          <button
            key={is}
            type="submit"
            name="answer"
            value={is}
            aria-pressed={answer === is}
            aria-disabled={pending || undefined}
            className="-ml-[1.5px] min-h-11 border-[1.5px] border-edge bg-raised px-1.5 leading-tight first:ml-0 hover:bg-sunk aria-pressed:border-ink aria-pressed:bg-ink aria-pressed:font-semibold aria-pressed:text-paper"
          >
            {words[is]}
          </button>
        ))}
      </div>
      <span role="alert" className="text-fine font-semibold text-hand">
        {state.problems.map(({ message }) => message).join(' ')}
      </span>
    </form>
  );
}
