import { ButtonForm } from '../../_forms/button-form';
import type { FoodInUse } from '#lib/store/read-foods-in-use';
import type { LastDay } from '#lib/shopping/counted-stock';
import { lotMg } from '#lib/shopping/shopping-list';
import { ANSWER_WORDS } from '#lib/shopping/shopping-text';
import { printGrams } from '#lib/units/print';
import { noneLeft } from '../stock-actions';
import { NewLotForm } from './food-parts';
import { FoodSection } from './food-section';
import { KeepsOpenPart } from './keeps-open-part';
import { LotRow } from './lot-row';
import { StockAnswers } from './stock-answers';
import { answerWords } from './stock-words';

interface Props {
  readonly food: FoodInUse;
  readonly today: string;
  /** The last day of each lot and why, by its id; left out where nothing limits it. */
  readonly lastDays: ReadonlyMap<string, LastDay>;
  /** How long it keeps once opened, in words. */
  readonly keeps: string;
}

/** What there is of a food at home: three answers, and lots for who keeps them. */
export function StockPart({ food, today, lastDays, keeps }: Props) {
  const there = food.lots.filter((lot) => lotMg(lot) > 0);
  const emptied = food.lots.filter((lot) => lotMg(lot) <= 0);
  return (
    <FoodSection id="stock" title="At home">
      {there.length === 0 ? (
        <>
          <StockAnswers
            foodId={food.id}
            foodName={food.name}
            answer={food.said?.answer?.is ?? null}
            words={ANSWER_WORDS}
          />
          <p className="mt-1 text-fine text-soft">{answerWords(food.said)}</p>
        </>
      ) : (
        <>
          <ul>
            {there.map((lot) => (
              <LotRow
                key={lot.id}
                lot={lot}
                rev={food.revs[lot.id] ?? 0}
                last={lastDays.get(lot.id) ?? null}
                today={today}
              />
            ))}
          </ul>
          {there.length > 1 && (
            <div className="mt-2">
              <ButtonForm
                action={noneLeft}
                values={{ foodId: food.id }}
                size="usual"
                tone="hand"
                label={`Nothing is left of ${food.name}`}
              >
                Nothing is left
              </ButtonForm>
            </div>
          )}
        </>
      )}
      <details className="mt-2 print:hidden">
        <summary className="link min-h-11 content-center">
          {there.length === 0
            ? 'Keep account in grams, with place and dates'
            : 'Put more into stock'}
        </summary>
        <div className="pt-1 pb-3">
          <NewLotForm foodId={food.id} />
        </div>
      </details>
      <KeepsOpenPart foodId={food.id} words={keeps} said={food.said?.opened ?? null} />
      {emptied.length > 0 && (
        <details className="print:hidden">
          <summary className="link min-h-11 content-center">Lots that are used up</summary>
          <ul>
            {emptied.map((lot) => (
              <LotRow
                key={lot.id}
                lot={lot}
                rev={food.revs[lot.id] ?? 0}
                last={null}
                today={today}
              />
            ))}
          </ul>
        </details>
      )}
      <p className="hidden print:block">
        {there.map((lot) => `${printGrams(lotMg(lot))} g ${lot.place}`).join('; ')}
      </p>
    </FoodSection>
  );
}
