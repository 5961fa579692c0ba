'use client';

import { permilleTyped } from '#lib/units/read-typed';
import type { SaidClaim } from '#lib/overview/said-rows';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { ChoiceField, TextField } from '../../../../_ui/form/field';
import { saveDishClaims } from '../claim-actions';
import { amountChoices, amountSaid, judgedAsChoices } from '../claim-choices';
import type { EditPage, Row } from './view';

interface Props {
  readonly page: EditPage;
  readonly row: Row;
  readonly claim: SaidClaim;
  readonly segmentId: string;
}

const FIELDS = ['judgedAs', 'amount', 'grams', 'proteinPermille'];

/** What the rules leave to the person: how much of the dish is customarily eaten, as what, and what of its protein counts. */
export function ClaimForm({ page, row, claim, segmentId }: Props) {
  const form = `claims-${row.id}`;
  const { said } = claim;
  const { amount, grams } = amountSaid(claim);
  const hidden = { episodeId: page.episodeId, segmentId, rev: page.revs[segmentId] ?? 0 };
  return (
    <FormFrame id={form} action={saveDishClaims} fields={FIELDS} hidden={hidden}>
      {(state, pending) => (
        <div className="grid max-w-2xl gap-4">
          <ChoiceField
            form={form}
            name="judgedAs"
            label="Judged as"
            hint="A main dish weighs at least 6 oz (170 g) a serving, has 40 g or more from each of two food groups, and is served as one; a meal weighs at least 10 oz (284 g) with three such parts (21 CFR 101.13(l), (m))."
            state={state}
            choices={judgedAsChoices(claim)}
            initial={said?.meal === true ? 'meal' : 'food'}
          />
          <ChoiceField
            form={form}
            name="amount"
            label="How much of it is customarily eaten"
            hint="The reference amount of its kind of food, as the table of 21 CFR 101.12(b) has it. Rows that its title speaks for stand first, with what the words would come to by each."
            state={state}
            choices={amountChoices(claim)}
            initial={amount}
          />
          <TextField
            form={form}
            name="grams"
            label="Grams, where no row fits or the row is a volume"
            state={state}
            initial={grams}
            control={{ inputMode: 'decimal', autoComplete: 'off' }}
          />
          <TextField
            form={form}
            name="proteinPermille"
            label="Share of its protein that counts, in %"
            hint="Words about protein count only what the body can use of it: the score is called PDCAAS (21 CFR 101.9(c)(7)). A laboratory or the maker of the main protein food can tell it, and studies have published it for single foods; of a mixed dish it has to be worked out. Empty: nobody has said."
            state={state}
            initial={said?.proteinPermille == null ? '' : permilleTyped(said.proteinPermille)}
            control={{ inputMode: 'decimal', autoComplete: 'off' }}
          />
          <p>
            <Button tone="plain" aria-disabled={pending || undefined}>
              Judge it by this
            </Button>
          </p>
        </div>
      )}
    </FormFrame>
  );
}
