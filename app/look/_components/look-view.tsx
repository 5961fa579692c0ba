import { PALETTES, TOKENS } from '../../_ui/palette';
import { SlateHead } from '../../_ui/slate-head';
import { ACTS } from './acts';
import { DAY } from './day';
import { ENTRY } from './entry';
import { NUMBERS } from './numbers';
import { PLACES } from './places';
import { SpecimenRow, type Specimen } from './specimen';

const PARTS: readonly { readonly title: string; readonly specimens: readonly Specimen[] }[] = [
  { title: 'Numbers', specimens: NUMBERS },
  { title: 'The day', specimens: DAY },
  { title: 'Acts', specimens: ACTS },
  { title: 'Entry', specimens: ENTRY },
  { title: 'Places', specimens: PLACES },
];

/** Every element in each state and theme, drawn by the elements themselves. */
export function LookView() {
  return (
    <>
      <SlateHead kind="For developers" title="The look" />
      <p className="mb-8 max-w-[70ch] text-lead">
        Every element in each state, by day and at night. Red is for what needs the person’s hand,
        teal for what runs by itself; nothing is known by colour alone.
      </p>
      <section aria-labelledby="colours" className="mb-10">
        <h2 id="colours">Colours</h2>
        <div className="mt-3 grid gap-4 lg:grid-cols-3">
          {(['day', 'night', 'print'] as const).map((theme) => (
            <div
              key={theme}
              data-theme={theme}
              className="border border-edge bg-paper p-4 text-ink"
            >
              <p className="lettering mb-2 text-fine text-soft">{theme}</p>
              <ul>
                {TOKENS.map((token) => (
                  <li key={token} className="flex items-center gap-3 py-0.5">
                    <span
                      aria-hidden="true"
                      className="size-6 border border-edge"
                      style={{ backgroundColor: `var(--${token})` }}
                    />
                    <span className="grow">{token}</span>
                    <code className="text-fine text-soft">{PALETTES[theme][token]}</code>
                  </li>
                ))}
              </ul>
            </div>
          ))}
        </div>
      </section>
      {PARTS.map(({ title, specimens }) => (
        <section key={title} aria-label={title} className="mt-12 border-t-[1.5px] border-ink pt-4">
          <h2 className="mb-4">{title}</h2>
          {specimens.map((specimen) => (
            <SpecimenRow key={specimen.name} specimen={specimen} />
          ))}
        </section>
      ))}
    </>
  );
}
