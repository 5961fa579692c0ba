import Link from 'next/link';
import { EmptyState } from '../../_ui/empty-state';
import { lotMg } from '#lib/shopping/shopping-list';
import { latestPriceWords } from '#lib/shopping/price-words';
import { ANSWER_WORDS } from '#lib/shopping/shopping-text';
import type { FoodInUse } from '#lib/store/read-foods-in-use';
import type { Page } from '#lib/store/page';
import { printGrams } from '#lib/units/print';
import { StockAnswers } from './stock-answers';

interface Props {
  readonly foods: Page<FoodInUse>;
  readonly words: string;
  /** Names of shops by id. */
  readonly shops: ReadonlyMap<string, string>;
  /** What is short of each food on the planned days, by its id. */
  readonly short: ReadonlyMap<string, string>;
}

/** All foods in use with what there is of them, in one press each, and their last prices. */
export function FoodList({ foods, words, shops, short }: Props) {
  if (foods.rows.length === 0) {
    return words === '' ? (
      <EmptyState title="No food in use yet">
        Write a dish with its ingredients, look a food up above, or read one from its label: it then
        stands here with its stock and prices.
      </EmptyState>
    ) : (
      <p className="mt-2 text-soft">No food in use fits “{words}”.</p>
    );
  }
  const query = words === '' ? '' : `q=${encodeURIComponent(words)}&`;
  return (
    <>
      <ul className="mt-2">
        {foods.rows.map((food) => (
          <FoodRow key={food.id} food={food} shops={shops} short={short.get(food.id) ?? null} />
        ))}
      </ul>
      {foods.next && (
        <Link
          className="link inline-flex min-h-11 items-center print:hidden"
          href={`/pantry?${query}foods=${foods.next}#foods`}
        >
          More foods
        </Link>
      )}
    </>
  );
}

function FoodRow({
  food,
  shops,
  short,
}: {
  readonly food: FoodInUse;
  readonly shops: ReadonlyMap<string, string>;
  readonly short: string | null;
}) {
  const { id, name, lots, packs, said } = food;
  const there = lots.filter((lot) => lotMg(lot) > 0);
  const answer = said?.answer?.is ?? null;
  const price = latestPriceWords(packs, shops);
  return (
    <li className="grid gap-x-6 gap-y-1 border-b border-line py-2 md:grid-cols-[minmax(0,1fr)_22rem] md:items-center print:grid-cols-[minmax(0,1fr)_10rem] print:py-0.5">
      <div className="min-w-0">
        <Link
          className="link inline-flex min-h-11 items-center print:min-h-0"
          href={`/pantry/foods/${id}`}
        >
          {name}
        </Link>
        {price !== null && <span className="block text-fine text-soft">{price}</span>}
        {short !== null && <b className="block text-fine font-semibold text-hand">{short}</b>}
      </div>
      {there.length === 0 ? (
        <>
          <StockAnswers foodId={id} foodName={name} answer={answer} words={ANSWER_WORDS} />
          <span className="hidden text-right print:block">
            {answer === null ? 'nobody said' : ANSWER_WORDS[answer]}
          </span>
        </>
      ) : (
        <Link
          className="link inline-flex min-h-11 items-center md:justify-end print:text-right"
          href={`/pantry/foods/${id}#stock`}
        >
          {there.map((lot) => `${printGrams(lotMg(lot))} g ${lot.place}`.trim()).join(', ')}
          <span className="unseen"> of {name} at home</span>
        </Link>
      )}
    </li>
  );
}
