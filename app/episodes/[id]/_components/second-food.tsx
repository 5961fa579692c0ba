'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { FoodPick } from '../../../foods/search/food-pick';
import { takeEither } from '../match-actions';

interface Props {
  readonly episodeId: string;
  readonly lineId: string;
  readonly rev: number;
  /** The food that it is counted as already. */
  readonly first: string;
}

/** For who cannot tell which of two foods it was: the second one, so that the number lies between both. */
export function SecondFood({ episodeId, lineId, rev, first }: Props) {
  const form = `either-${lineId}`;
  return (
    <FormFrame
      id={form}
      action={takeEither}
      fields={['orFoodId']}
      hidden={{ episodeId, lineId, rev }}
    >
      {(state) => (
        <div className="grid gap-2">
          <FoodPick
            form={form}
            state={state}
            name="orFoodId"
            label={`Either ${first}, or`}
            listLabel="The second food"
          />
          <div>
            <Button size="small">Count it as either</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
