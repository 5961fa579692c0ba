import Link from 'next/link';
import { FocusHere } from '../../../_components/focus-here';
import { SlateHead } from '../../../../../_ui/slate-head';
import { SayLine } from '../../../../../_ui/say-line';
import { LockLine } from '../../_components/lock-line';
import type { SwapView } from '#lib/publish/swap-view';
import type { TriedLine } from '#lib/swap/tried-lines';
import { dishSwapsHref, stepsText, swapsHref } from '../steps-text';
import { SwapDifferences } from './difference-table';
import { AddWay, LineWays } from './line-ways';
import { SaveForm } from './save-form';
import type { DishSwaps } from './view';

/** Swaps of one dish: what is tried, what it does at once, and the name to keep it under. */
export function DishSwapsView({ page }: { readonly page: DishSwaps }) {
  const { dish, view, problems, lock } = page;
  return (
    <>
      <SlateHead kind="Swaps" title={dish.title} shut={lock.standing === 'locked'} />
      <LockLine episodeId={page.file.episode.id} told={lock} />
      <div className="grid grid-cols-1 gap-x-12 gap-y-10 lg:grid-cols-2">
        <TryPart page={page} />
        <div className="min-w-0">
          <section id="told" tabIndex={-1} aria-label="What it does" className="outline-none">
            <FocusHere id="told" of={stepsText(page.steps)} />
            {problems.length > 0 && (
              <div
                role="alert"
                className="border-l-[6px] border-hand py-1 pl-3 font-semibold text-hand"
              >
                {problems.map((message) => (
                  <p key={message}>{message}</p>
                ))}
              </div>
            )}
            {view === null && problems.length === 0 && (
              <p className="max-w-[60ch] text-soft">
                Choose an ingredient, and what it would change stands here: every number with its
                range, the cost, the allergens, and a sentence to answer with.
              </p>
            )}
            {view && <Told view={view} />}
          </section>
          {page.saved.length > 0 && <Saved page={page} />}
        </div>
      </div>
      <p className="mt-10 print:hidden">
        <Link
          className="link inline-flex min-h-11 items-center"
          href={swapsHref(page.file.episode.id)}
        >
          All swaps of the episode
        </Link>
      </p>
    </>
  );
}

function TryPart({ page }: { readonly page: DishSwaps }) {
  const { dish, lines, steps, variant, line, offered } = page;
  const episodeId = page.file.episode.id;
  const hidden = hiddenOf(page);
  const here = (open: string | null) =>
    dishSwapsHref(episodeId, dish.id, { steps, variantId: variant?.id ?? null, line: open });
  return (
    <section aria-labelledby="try" className="min-w-0">
      <h2 id="try">What if …</h2>
      <ul className="mt-2 border-t-[1.5px] border-ink">
        {lines.map((each) => (
          <li key={each.id} id={`line-${each.id}`} className="border-b border-line py-1.5">
            <div className="flex flex-wrap items-baseline justify-between gap-x-4">
              <LineWords line={each} />
              {each.kind !== 'out' && each.kind !== 'new' && (
                <Link
                  className="link inline-flex min-h-8 items-center text-fine print:hidden"
                  href={here(line === each.id ? null : each.id)}
                  scroll={false}
                  aria-label={line === each.id ? `Close ${each.text}` : `Swap ${each.text}`}
                >
                  {line === each.id ? 'Close' : 'Swap'}
                </Link>
              )}
            </div>
            {line === each.id && (
              <div className="mt-2 mb-2 print:hidden">
                <LineWays
                  hidden={hidden}
                  offered={offered}
                  lineId={each.id}
                  text={each.text}
                  counted={each.counted}
                />
              </div>
            )}
          </li>
        ))}
      </ul>
      <div className="mt-2 print:hidden" id="line-add">
        {line === 'add' ? (
          <AddWay hidden={hidden} />
        ) : (
          <Link
            className="link inline-flex min-h-11 items-center"
            href={here('add')}
            scroll={false}
          >
            Add a food
          </Link>
        )}
      </div>
      {steps.length > 0 && <Steps page={page} />}
    </section>
  );
}

function LineWords({ line }: { readonly line: TriedLine }) {
  const { text, amount, kind } = line;
  const words =
    kind === 'out' ? 'left out' : kind === 'new' ? 'added' : kind === 'changed' ? 'swapped' : '';
  return (
    <span className={`min-w-0 ${kind === 'same' ? '' : 'font-semibold'}`}>
      {kind === 'out' ? <s>{text}</s> : text}
      <span className="block text-fine font-normal text-soft">
        {[kind === 'out' ? '' : (amount ?? 'grams not known'), words].filter(Boolean).join(', ')}
      </span>
    </span>
  );
}

function Steps({ page }: { readonly page: DishSwaps }) {
  const { steps, stepWords, dish, variant } = page;
  const episodeId = page.file.episode.id;
  const variantId = variant?.id ?? null;
  return (
    <div className="mt-6">
      <h3>This swap</h3>
      <ol className="mt-1">
        {stepWords.map((words, at) => (
          <li
            key={words}
            className="flex flex-wrap items-baseline justify-between gap-x-4 border-b border-line py-1"
          >
            <span className="min-w-0">{words}</span>
            <Link
              className="link inline-flex min-h-8 items-center text-fine print:hidden"
              href={dishSwapsHref(episodeId, dish.id, { variantId, steps: steps.toSpliced(at, 1) })}
              scroll={false}
              aria-label={`Not ${words}`}
            >
              Not this
            </Link>
          </li>
        ))}
      </ol>
      <div className="mt-5 print:hidden">
        <SaveForm
          hidden={{ ...hiddenOf(page), rev: page.rev }}
          name={page.name}
          again={variant !== null}
        />
      </div>
    </div>
  );
}

function hiddenOf({ file, dish, variant, steps }: DishSwaps): Readonly<Record<string, string>> {
  return {
    ...{ episodeId: file.episode.id, segmentId: dish.id },
    ...{ variantId: variant?.id ?? '', steps: stepsText(steps) },
  };
}

function Told({ view }: { readonly view: SwapView }) {
  const [first, ...others] = view.sentences;
  return (
    <div className="grid grid-cols-1 gap-7">
      <h2>What it does</h2>
      {first && (
        <SayLine
          id="swap-sentence"
          title={`To answer with: ${first.words.toLowerCase()}`}
          text={first.text}
          copy="Copy the sentence"
        />
      )}
      {others.length > 0 && (
        <details className="print:hidden">
          <summary className="link min-h-11 content-center">The same of another part</summary>
          <div className="mt-2 grid gap-6">
            {others.map(({ key, words, text }) => (
              <SayLine
                key={key}
                id={`swap-sentence-${key}`}
                title={words}
                text={text}
                copy="Copy the sentence"
              />
            ))}
          </div>
        </details>
      )}
      <SwapDifferences view={view} />
      <div>
        <h3>Cost</h3>
        <p className="mt-1">{view.cost}</p>
      </div>
      <div>
        <h3>Allergens</h3>
        {view.allergens.length === 0 ? (
          <p className="mt-1">No change in what is said of them.</p>
        ) : (
          <ul className="mt-1 list-disc pl-5">
            {view.allergens.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        )}
        <p className="mt-1 text-fine text-soft">
          As far as labels and you have said: the list may be incomplete. Read the label of every
          food that is new.
        </p>
      </div>
      {view.remarks.length > 0 && (
        <div>
          <h3>To bear in mind</h3>
          <ul className="mt-1 list-disc pl-5">
            {view.remarks.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

function Saved({ page }: { readonly page: DishSwaps }) {
  return (
    <div className="mt-8 print:hidden">
      <h2>Saved of this dish</h2>
      <ul className="mt-1">
        {page.saved.map(({ id, name, steps }) => (
          <li key={id}>
            <Link
              className="link inline-flex min-h-8 items-center"
              href={dishSwapsHref(page.file.episode.id, page.dish.id, { variantId: id, steps })}
            >
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
