import { Disclosure } from '../../../_ui/disclosure';
import type { AgainView } from '../again';
import { addSegment } from '../actions';
import { AgainDishes } from './again-dishes';
import { RecipeWay } from './recipe-way';
import { SegmentForm } from './segment-form';

interface Props {
  readonly episodeId: string;
  /** Stands open where there is nothing yet. */
  readonly open: boolean;
  readonly again?: AgainView | undefined;
}

/** The two things that a running order is made of, and dishes that were there before. */
export function AddSegment({ episodeId, open, again }: Props) {
  const before = again && (again.words !== null || again.dishes.dishes.length > 0);
  return (
    <section
      aria-label="Add to the running order"
      className="mt-14 grid gap-x-12 border-t-[1.5px] border-ink pt-4 lg:grid-cols-2 print:hidden"
    >
      <Disclosure words="Add a dish" open={open} large>
        <SegmentForm
          id="new-dish"
          action={addSegment}
          hidden={{ episodeId }}
          kind="recipe"
          title=""
          planned="3:00"
          batches="1"
          submit="Add the dish"
        />
        <RecipeWay episodeId={episodeId} />
      </Disclosure>
      <Disclosure words="Add talk" large>
        <SegmentForm
          id="new-talk"
          action={addSegment}
          hidden={{ episodeId }}
          kind="talk"
          title=""
          planned="0:40"
          batches="1"
          submit="Add the talk"
        />
      </Disclosure>
      {before && (
        <div id="again" className="scroll-mt-4">
          <Disclosure words="Again, from …" open={again.words !== null} large>
            <AgainDishes episodeId={episodeId} again={again} />
          </Disclosure>
        </div>
      )}
    </section>
  );
}
