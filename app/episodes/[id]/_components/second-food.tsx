'use client';

import { useState } from 'react';
import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { CONTROL, Field } from '../../../_ui/form/field';
import { useFoodSearch } from '../../../foods/search/use-food-search';
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
  const [words, setWords] = useState('');
  const hits = useFoodSearch(words.trim());
  return (
    <FormFrame
      id={form}
      action={takeEither}
      fields={['orFoodId']}
      hidden={{ episodeId, lineId, rev }}
    >
      {(state) => (
        <div className="grid gap-2">
          <Field form={form} name="words" label={`Either ${first}, or`} state={state}>
            {(wired) => (
              <input
                {...wired}
                type="search"
                autoComplete="off"
                className={CONTROL}
                value={words}
                onChange={(event) => setWords(event.target.value)}
              />
            )}
          </Field>
          <Field form={form} name="orFoodId" label="The second food" state={state} quiet>
            {(wired) => (
              <select {...wired} className={CONTROL}>
                {hits.length === 0 && <option value="">type its name above</option>}
                {hits.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            )}
          </Field>
          <div>
            <Button size="small">Count it as either</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
