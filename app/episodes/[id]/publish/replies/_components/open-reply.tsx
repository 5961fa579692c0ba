import Link from 'next/link';
import { FocusHere } from '../../../_components/focus-here';
import { ButtonForm } from '../../../../../_forms/button-form';
import { dishesOf, type Dish } from '#lib/episode/context';
import type { DishReason } from '#lib/publish/viewer-answer';
import type { AnotherNumber, Explained } from '#lib/swap/another-number';
import { amountWords, nutrientWords } from '#lib/swap/amount-words';
import { slipSumText } from '#lib/swap/reply-words';
import { printTo } from '#lib/units/print';
import { removeReply } from '../actions';
import type { OpenReply as Open, RepliesPage } from '../read-replies';
import type { OfferedSwap } from '../read-asked-swap';
import { ofText, replyHref } from '../reply-href';
import { ReadingForm } from './reading-form';
import { ReplyForm } from './reply-form';

type Region = RepliesPage['file']['episode']['region'];

interface Props {
  readonly page: RepliesPage;
  readonly open: Open;
}

/** One comment: what was read of it, the differences that give its number, and the reply. */
export function OpenReply({ page, open }: Props) {
  const { reply, answer } = open;
  const { id: episodeId, region } = page.file.episode;
  const { number, dish, found } = answer;
  const typed = number ? printTo(number.amount, 10 ** -number.decimals) : '';
  const of = dish && found ? ofText(dish.id, found.scope) : (dish?.id ?? '');
  const place = { replyId: reply.id, number: typed, nutrient: number?.nutrient ?? null, of };
  const rev = page.revs[reply.id] ?? 0;
  return (
    <section
      id="comment"
      tabIndex={-1}
      aria-labelledby="comment-head"
      className="mt-10 outline-none border-t-[1.5px] border-ink pt-4"
    >
      <FocusHere id="comment" of={[...Object.values(place), answer.slip].join(' ')} />
      <h2 id="comment-head">The comment</h2>
      <blockquote className="mt-2 max-w-3xl border-l-[3px] border-ink pl-4 break-words whitespace-pre-wrap">
        <bdi>{reply.comment}</bdi>
      </blockquote>
      <div className="mt-5">
        {open.swap && <AskedSwap swap={open.swap} />}
        <p className="mb-3 max-w-[70ch]">{readWords(open, region)}</p>
        <div className="print:hidden">
          <ReadingForm
            key={`${typed} ${number?.nutrient ?? ''} ${of}`}
            hidden={{ episodeId, replyId: reply.id }}
            number={typed}
            nutrient={number?.nutrient ?? 'energyKcal'}
            of={of}
            nutrients={page.nutrients.map((value) => ({
              value,
              words: nutrientWords(value, region),
            }))}
            parts={partsOf(page, dish)}
          />
        </div>
      </div>
      {found && (
        <Steps
          found={found}
          open={open}
          region={region}
          href={(slip) => replyHref(episodeId, { ...place, slip })}
        />
      )}
      <div className="mt-8">
        <ReplyForm
          key={reply.id}
          hidden={{
            ...{ episodeId, replyId: reply.id, rev, number: typed },
            ...{ nutrient: number?.nutrient ?? '', segmentId: dish?.id ?? '' },
            slip: answer.slip ?? '',
          }}
          saved={reply.text}
          draft={answer.draft}
          asked={open.asked}
        />
        <div className="mt-2 text-fine">
          <ButtonForm
            action={removeReply}
            values={{ episodeId, replyId: reply.id, rev }}
            tone="hand"
            label="Take this comment out"
          >
            Take it out
          </ButtonForm>
        </div>
      </div>
    </section>
  );
}

const WHY: Readonly<Record<DishReason, string>> = {
  chosen: 'as chosen',
  named: 'which the comment names',
  ourNumber: 'whose number the comment quotes',
  onlyOne: 'the only dish',
  explains: 'where a single difference gives this number; the comment names no dish',
  first: 'the first dish; the comment names none',
};

/** What the comment asks to swap, and the way to the page where it is tried. */
function AskedSwap({ swap }: { readonly swap: OfferedSwap }) {
  const { dish, line, other, food, href } = swap;
  const asks =
    other === null ? `“${line}” left out of ${dish}` : `${other} in place of “${line}” in ${dish}`;
  const taken =
    other === null
      ? ''
      : food === null
        ? ` No food is called “${other}”: choose it there.`
        : ` Taken for it: ${food}. Another one is chosen there.`;
  return (
    <p className="mb-3 max-w-[70ch]">
      Read as a swap: {asks}.{taken}{' '}
      <Link className="link" href={href}>
        Open this swap
      </Link>
    </p>
  );
}

function readWords({ answer, swap }: Open, region: Region): string {
  const { number, dish, why, read } = answer;
  if (!dish) return 'This episode has no dish yet.';
  if (!number && swap) return 'If a number of theirs is in it too, write it below.';
  if (!number) {
    return `No number was found in it. Write the viewer’s number below; the dish may be ${dish.title}.`;
  }
  const bare = read.some((each) => each.amount === number.amount && !each.named);
  const told = amountWords(number.nutrient, printTo(number.amount, 10 ** -number.decimals), region);
  const unit = bare
    ? ` (no unit stands with it: taken for ${nutrientWords(number.nutrient, region)})`
    : '';
  return `Read as ${number.about ? 'about ' : ''}${told}${unit}, of ${dish.title}, ${WHY[why]}. Put it right if it is something else.`;
}

function partsOf({ file }: RepliesPage, dish: Dish | null) {
  return [
    ...dishesOf(file.episode.segments).flatMap(({ id, title, recipe }) => [
      { value: ofText(id, { kind: 'whole' }), words: `${title}, the whole dish` },
      ...recipe.portions.map((portion) => ({
        value: ofText(id, { kind: 'portion', portionId: portion.id }),
        words: `${title}, ${portion.kind === 'count' ? `one of ${portion.of}` : portion.name || 'a portion'}`,
      })),
    ]),
    ...(dish
      ? [
          {
            value: ofText(dish.id, { kind: 'day' }),
            words: `all dishes, with the difference in ${dish.title}`,
          },
        ]
      : []),
  ];
}

interface StepsProps {
  readonly found: AnotherNumber;
  readonly open: Open;
  readonly region: Region;
  readonly href: (slip: string) => string;
}

function Steps({ found, open, region, href }: StepsProps) {
  return (
    <div className="mt-7">
      <h3>What gives this number</h3>
      <p className="mt-1 max-w-[70ch]">{standingWords(found, open, region)}</p>
      <ul className="mt-2 max-w-3xl">
        {found.explained.map((each) => (
          <li key={each.slip.code} className="border-b border-line py-2">
            <StepRow
              found={found}
              each={each}
              region={region}
              isTold={each.slip.code === open.answer.slip}
              href={href(each.slip.code)}
            />
          </li>
        ))}
      </ul>
    </div>
  );
}

function standingWords(
  { standing, explained }: AnotherNumber,
  { answer }: Open,
  region: Region,
): string {
  const printed = answer.ours;
  const ours =
    printed?.number != null && answer.number
      ? `Your own number is ${amountWords(answer.number.nutrient, printed.text, region)}. `
      : '';
  switch (standing) {
    case 'same':
      return `${ours}It is the viewer’s number too.`;
    case 'explained':
      return explained.length === 1
        ? `${ours}One single difference gives theirs.`
        : `${ours}${explained.length} single differences give theirs: what is nobody’s slip first, what is slight last. Which one it was, only the viewer knows.`;
    case 'open':
      return 'Your own number is open: something in the dish is not known yet, so nobody can say what the difference is.';
    case 'unexplained':
      return `${ours}No single difference gives theirs. It may be several at once, another recipe or other foods: nobody can say from here, so the reply asks.`;
  }
}

function rowRemark({ slip, slight }: Explained): string {
  if (slip.asWritten) return ' (as the words of your ingredient say: look at its food)';
  return slight ? ' (so small a difference that other things may come to it too)' : '';
}

function StepRow({
  found,
  each,
  region,
  isTold,
  href,
}: {
  readonly found: AnotherNumber;
  readonly each: Explained;
  readonly region: Region;
  readonly isTold: boolean;
  readonly href: string;
}) {
  return (
    <>
      <div className="flex flex-wrap items-baseline justify-between gap-x-4">
        <span className={isTold ? 'font-semibold' : ''}>
          {each.slip.words.replace(/,$/, '')}:{' '}
          {amountWords(each.slip.input.nutrient, each.value, region)}
          {rowRemark(each)}
        </span>
        {isTold ? (
          <span className="text-fine text-soft">the reply tells this one</span>
        ) : (
          <Link
            className="link inline-flex min-h-8 items-center text-fine print:hidden"
            href={href}
            aria-label={`Answer with: ${each.slip.words}`}
          >
            Answer with this
          </Link>
        )}
      </div>
      <details open={isTold}>
        <summary className="link min-h-8 content-center text-fine">
          The sum, step by step<span className="unseen"> {each.slip.words}</span>
        </summary>
        <ul className="mt-1 mb-1 text-fine">
          {slipSumText(found, each)
            .split('\n')
            .map((text, at) => (
              <li key={`${at} ${text}`}>{text}</li>
            ))}
        </ul>
      </details>
    </>
  );
}
