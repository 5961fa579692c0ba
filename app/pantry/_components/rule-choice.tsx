'use client';

import { ROUNDING_RULES } from '#lib/foods/food-lists';
import { RULE_WORDS, type PanelRule } from './label-texts';

interface Props {
  readonly rule: PanelRule;
  readonly onChoose: (rule: PanelRule) => void;
}

/** Which panel is in the hand. Before any script, each is a link to the page with that panel. */
export function RuleChoice({ rule, onChoose }: Props) {
  return (
    <nav aria-label="Kind of panel" className="flex flex-wrap items-center gap-x-6 print:hidden">
      {ROUNDING_RULES.map((each) => (
        <a
          key={each}
          href={`?rule=${each}`}
          aria-current={each === rule ? 'true' : undefined}
          className="link inline-flex min-h-11 items-center aria-[current]:font-bold aria-[current]:decoration-ink aria-[current]:decoration-[3px]"
          onClick={(event) => {
            event.preventDefault();
            window.history.replaceState(null, '', `?rule=${each}`);
            onChoose(each);
          }}
        >
          {RULE_WORDS[each]}
        </a>
      ))}
    </nav>
  );
}
