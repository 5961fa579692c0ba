'use client';

import { ButtonForm } from '../../../../_forms/button-form';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { Disclosure } from '../../../../_ui/disclosure';
import { TextField } from '../../../../_ui/form/field';
import { PART_WORDS } from '#lib/publish/description/change-layout';
import { ALWAYS_SHOWN } from '#lib/publish/description/layout';
import {
  DISH_PARTS,
  type BlockKind,
  type DescriptionLayout,
  type DishPart,
} from '#lib/episode/publish-schema';
import { changeLayoutPart, changeLimit } from '../layout-actions';

interface Props {
  readonly episodeId: string;
  /** In use, with every part in it. */
  readonly layout: DescriptionLayout;
}

/** The house layout: which parts a description has, in which order, how long at most. Each press is saved. */
export function LayoutPart({ episodeId, layout }: Props) {
  const out = DISH_PARTS.filter((part) => !layout.dish.includes(part));
  return (
    <div className="mt-4 print:hidden">
      <Disclosure words="House layout">
        <p className="max-w-[60ch] text-soft">
          Holds for the descriptions of all episodes. Notes to numbers, allergens, cautions, a
          disclosure and corrections are always in it.
        </p>
        <h3 className="mt-3">Parts, from the top</h3>
        <ol className="mt-1">
          {layout.blocks.map(({ kind, shown }) => (
            <PartRow
              key={kind}
              episodeId={episodeId}
              part={kind}
              shown={shown}
              among={layout.blocks.map((block) => block.kind)}
            />
          ))}
        </ol>
        <h3 className="mt-4">Of each dish</h3>
        <ol className="mt-1">
          {[...layout.dish, ...out].map((part) => (
            <PartRow
              key={part}
              episodeId={episodeId}
              part={part}
              shown={layout.dish.includes(part)}
              among={layout.dish}
            />
          ))}
        </ol>
        <FormFrame id="limit" action={changeLimit} fields={['limit']} hidden={{ episodeId }}>
          {(state) => (
            <div className="mt-4 flex flex-wrap items-end gap-4">
              <TextField
                form="limit"
                name="limit"
                label="Characters at most"
                state={state}
                initial={String(layout.limit)}
                control={{ inputMode: 'numeric' }}
              />
              <Button>Save the limit</Button>
            </div>
          )}
        </FormFrame>
      </Disclosure>
    </div>
  );
}

interface RowProps {
  readonly episodeId: string;
  readonly part: BlockKind | DishPart;
  readonly shown: boolean;
  /** Those that it can move among, in their order. */
  readonly among: readonly (BlockKind | DishPart)[];
}

function PartRow({ episodeId, part, shown, among }: RowProps) {
  const words = PART_WORDS[part];
  const isFixed = ALWAYS_SHOWN.some((kind) => kind === part);
  const press = (what: string, label: string, text: string, idle?: string) => (
    <ButtonForm
      action={changeLayoutPart}
      values={{ episodeId, part, what }}
      label={label}
      tone="plain"
      idle={idle}
    >
      {text}
    </ButtonForm>
  );
  return (
    <li className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1 border-b border-line py-1">
      <span className={shown ? '' : 'text-soft'}>
        {words}
        {shown ? '' : ', left out'}
      </span>
      <span className="flex flex-wrap gap-2">
        {among.includes(part) &&
          press('up', `${words} up`, 'Up', among[0] === part ? 'It stands first.' : undefined)}
        {among.includes(part) &&
          press(
            'down',
            `${words} down`,
            'Down',
            among.at(-1) === part ? 'It stands last.' : undefined,
          )}
        {!isFixed &&
          (shown
            ? press('hide', `Leave out ${words}`, 'Leave out')
            : press('show', `Put in ${words}`, 'Put in'))}
      </span>
    </li>
  );
}
