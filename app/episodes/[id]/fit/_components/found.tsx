import { ButtonForm } from '../../../../_forms/button-form';
import { ButtonLink } from '../../../../_ui/button';
import { FigureText } from '../../../../_ui/figure-view';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import { verdictWords } from '#lib/figures/limit-words';
import type { Target } from '#lib/episode/schema';
import type { RecipeFit } from '#lib/swap/recipe-fit';
import type { Fitted } from '#lib/swap/told-fit';
import { printGrams, printTo } from '#lib/units/print';
import { dishSwapsHref, stepsText } from '../../publish/swaps/steps-text';
import { applyFit } from '../actions';

interface Props {
  readonly episodeId: string;
  readonly segmentId: string;
  /** The amounts that are shown beside the new ones, as one text. */
  readonly was: string;
  readonly fit: RecipeFit;
  /** Whether all that the numbers may be had to meet it. */
  readonly strict: boolean;
  /** What a target asks, in words. */
  readonly goal: (target: Target) => string;
}

/** What a fit found: new amounts beside the old, what is met, and how sure that is. */
export function Found(props: Props) {
  const { fit, goal } = props;
  if (fit.status === 'stopped') {
    return (
      <>
        <p className="max-w-[60ch] font-semibold">Not decided in the time there was.</p>
        <p className="mt-1 max-w-[60ch]">
          {fit.atLeast === null
            ? 'Whether any amounts do it is not known. Let fewer ingredients change, or in larger steps.'
            : `No amounts do it with less change than ${changeWords(fit.atLeast)}; whether any do it with that is not known. Let fewer ingredients change, or in larger steps.`}
        </p>
      </>
    );
  }
  if (fit.status === 'fits') {
    return (
      <>
        <p className="max-w-[60ch]">
          {fit.lines.length === 0
            ? `${props.strict ? 'Whatever the range, all' : 'All'} is met as it is: nothing has to change.`
            : `${props.strict ? 'All is met, whatever the range.' : 'All is met by the numbers themselves; where a range crosses what was asked, it says so below.'} Proven: nothing else meets it with less change, ${changeWords(fit.change)}.`}
        </p>
        <Amounts {...props} fitted={fit} />
        <Goals {...props} fitted={fit} />
        {fit.lines.length > 0 && <Take {...props} fitted={fit} apply />}
      </>
    );
  }
  return (
    <>
      <p className="max-w-[60ch] font-semibold">
        {fit.clashing.length === 1
          ? 'This cannot be met, whatever the amounts within their bounds:'
          : 'These cannot be met together, whatever the amounts within their bounds:'}
      </p>
      <ul className="mt-1 list-disc pl-5">
        {fit.clashing.map((target) => (
          <li key={target.id}>{goal(target)}</li>
        ))}
      </ul>
      <p className="mt-1 text-fine text-soft">
        {fit.smallest
          ? 'Proven, and no smaller set of them clashes.'
          : 'Proven; without any one of them the others can be met, though a smaller set may clash too.'}
      </p>
      {fit.nearest && (
        <>
          <h3 className="mt-6">The nearest miss</h3>
          <Amounts {...props} fitted={fit.nearest} />
          <Goals {...props} fitted={fit.nearest} />
          {fit.nearest.lines.length > 0 && <Take {...props} fitted={fit.nearest} />}
        </>
      )}
    </>
  );
}

/** `47 % of one ingredient`: the sum of relative changes. */
function changeWords(change: number): string {
  return `${printTo(change * 100, 1)} % of one ingredient in all`;
}

type Part = Props & { readonly fitted: Fitted };

function Amounts({ fitted }: Part) {
  if (fitted.lines.length === 0) return null;
  return (
    <div className="mt-4">
      <Table
        caption="Amounts now and new"
        head={
          <>
            <Th>ingredient</Th>
            <Th number>now</Th>
            <Th number>new</Th>
          </>
        }
      >
        {fitted.lines.map(({ lineId, text, fromMg, toMg }) => (
          <Tr key={lineId}>
            <RowHead>{text}</RowHead>
            <Td number>{printGrams(fromMg)} g</Td>
            <Td number>
              <b className="font-bold">{printGrams(toMg)} g</b>
            </Td>
          </Tr>
        ))}
      </Table>
    </div>
  );
}

function Goals({ fitted, goal }: Part) {
  return (
    <div className="mt-6">
      <Table
        caption="What was asked, before and after"
        close
        head={
          <>
            <Th>asked</Th>
            <Th number>now</Th>
            <Th number>then</Th>
            <Th>so it is</Th>
          </>
        }
      >
        {fitted.targets.map(({ target, before, after, verdict }) => (
          <Tr key={target.id}>
            <RowHead>{goal(target)}</RowHead>
            <Td number>{before ? <FigureText figure={before} whisker /> : 'none'}</Td>
            <Td number>{after ? <FigureText figure={after} whisker /> : 'none'}</Td>
            <Td>{verdictWords(verdict, after ?? undefined)}</Td>
          </Tr>
        ))}
      </Table>
    </div>
  );
}

function Take({
  episodeId,
  segmentId,
  was,
  fitted,
  apply = false,
}: Part & { readonly apply?: boolean }) {
  const steps = fitted.steps;
  return (
    <div className="mt-5 print:hidden">
      <div className="flex flex-wrap items-center gap-3">
        {apply && (
          <ButtonForm
            action={applyFit}
            values={{ episodeId, segmentId, was, steps: stepsText(steps) }}
            tone="go"
            size="usual"
          >
            Put them into the recipe
          </ButtonForm>
        )}
        <ButtonLink href={dishSwapsHref(episodeId, segmentId, { steps })}>
          Keep them as a swap
        </ButtonLink>
      </div>
      {apply && (
        <p className="mt-2 max-w-[60ch] text-fine text-soft">
          Into the recipe is one act that can be undone. What was weighed of these ingredients, and
          of the finished dish, was of other amounts and goes with it.
        </p>
      )}
    </div>
  );
}
