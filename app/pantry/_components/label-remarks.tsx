'use client';

import { Button } from '../../_ui/button';
import { energyWords } from '#lib/foods/energy-words';
import type { FoodVersion } from '#lib/foods/food';
import type { LikelySlip } from '#lib/foods/likely-slip';
import { RULE_SOURCES } from '#lib/foods/rule-sources';
import type { Problem } from '#lib/result';
import { labelField, MEND, mendValue } from '../field-names';
import { typeInto } from './use-typed-texts';

interface Props {
  readonly version: FoodVersion;
  readonly problems: readonly Problem[];
  readonly slips: readonly LikelySlip[];
}

/** What the numbers say together, what cannot be, and the slip that would explain it. */
export function LabelRemarks({ version, problems, slips }: Props) {
  const sums = energyWords(version);
  return (
    <section aria-labelledby="label-remarks" className="lg:sticky lg:top-4 lg:self-start">
      <h2 id="label-remarks" className="font-slate text-head font-semibold">
        Does it add up?
      </h2>
      <div role="status" className="mt-2 min-h-14">
        {problems.length === 0 ? (
          <p className="text-soft">
            {sums.length > 0
              ? 'Nothing speaks against these numbers.'
              : 'Said here as soon as energy, fat, carbohydrate and protein are typed.'}
          </p>
        ) : (
          <ul className="border-l-[6px] border-hand pl-3">
            {problems.map(({ path, code, message }) => (
              <li key={`${path} ${code}`} className="mb-1">
                {message}
              </li>
            ))}
          </ul>
        )}
        {slips.length > 0 && (
          <>
            <p className="mt-3 font-semibold">
              {slips.length === 1 ? 'A likely slip' : 'Likely slips, the likeliest first'}
            </p>
            <ul>
              {slips.map((slip) => (
                <li
                  key={slip.message}
                  className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1 border-b border-line py-1.5"
                >
                  <span>{slip.message}</span>
                  <span className="print:hidden">
                    <Mend slip={slip} />
                  </span>
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
      {sums.length > 0 && (
        <ul className="mt-3 text-fine text-soft">
          {sums.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      <details className="mt-3 text-fine print:hidden">
        <summary className="link min-h-11 content-center">Where the ranges come from</summary>
        {RULE_SOURCES[version.rule].map((words) => (
          <p key={words} className="mb-1 max-w-[60ch]">
            {words}
          </p>
        ))}
      </details>
    </section>
  );
}

/** On a narrow screen the remarks stand below a long panel: this line says at once that there are some. */
export function RemarksLine({ problems, slips }: Pick<Props, 'problems' | 'slips'>) {
  if (problems.length === 0) return null;
  const [slip] = slips;
  return (
    <div
      role="group"
      aria-label="Remarks in short"
      className="sticky bottom-0 z-10 mt-2 flex items-center justify-between gap-3 border-2 border-hand bg-hand-wash px-3 py-1.5 lg:hidden print:hidden"
    >
      <a href="#label-remarks" className="link min-h-6 text-fine">
        {slip ? slip.message : problems.length === 1 ? 'One remark' : `${problems.length} remarks`}
      </a>
      {slip && <Mend slip={slip} />}
    </div>
  );
}

/** The button puts the right texts into their fields; before any script it asks the server to. */
function Mend({ slip: { kind, changes } }: { readonly slip: LikelySlip }) {
  const texts = changes.map(({ path, to }) => [labelField(path), to] as const);
  return (
    <Button
      size="small"
      name={MEND}
      value={mendValue(texts)}
      onClick={(event) => {
        const { form } = event.currentTarget;
        if (!form) return;
        event.preventDefault();
        typeInto(form, Object.fromEntries(texts));
      }}
    >
      {kind === 'fields' ? 'Swap them' : `Use ${changes[0]?.to ?? ''}`}
    </Button>
  );
}
