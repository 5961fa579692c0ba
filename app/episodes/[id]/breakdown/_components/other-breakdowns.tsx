import Link from 'next/link';
import type { ReactNode } from 'react';
import { namedScopes, scopeText, type NamedScope } from '#lib/figures/breakdown-scope';
import { countedNutrients } from '#lib/figures/shown-nutrients';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { breakdownHref } from '../href';
import type { FoundBreakdown } from '../read-breakdown';

interface Props {
  readonly found: FoundBreakdown;
}

/** The way to another nutrient of the same amount, and to another amount of the same nutrient. */
export function OtherBreakdowns({ found: { file, named, of } }: Props) {
  const { id } = file.episode;
  const shown = countedNutrients(file.episode);
  const nutrients = shown.includes(of.nutrient) ? shown : [...shown, of.nutrient];
  const here = scopeText(named.scope);
  return (
    <nav aria-label="Other breakdowns" className="mt-8 border-y border-line py-2 print:hidden">
      <Row title="Number">
        {nutrients.map((nutrient) => (
          <Choice
            key={nutrient}
            href={breakdownHref(id, named.scope, nutrient)}
            current={nutrient === of.nutrient}
          >
            {NUTRIENTS[nutrient].label}
          </Choice>
        ))}
      </Row>
      {byDish(namedScopes(file)).map(([title, scopes]) => (
        <Row key={scopes.map(({ scope }) => scopeText(scope)).join()} title={title}>
          {scopes.map(({ scope, part }) => (
            <Choice
              key={scopeText(scope)}
              href={breakdownHref(id, scope, of.nutrient)}
              current={scopeText(scope) === here}
            >
              {part}
            </Choice>
          ))}
        </Row>
      ))}
    </nav>
  );
}

function byDish(scopes: readonly NamedScope[]): readonly (readonly [string, NamedScope[]])[] {
  const dishes = new Map<string | null, NamedScope[]>();
  for (const each of scopes) {
    dishes.set(each.segmentId, [...(dishes.get(each.segmentId) ?? []), each]);
  }
  return [...dishes.values()].map((all) => [all[0]?.title ?? '', all] as const);
}

function Row({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <div className="flex flex-wrap gap-x-4 md:grid md:grid-cols-[minmax(8rem,16rem)_1fr]">
      <span className="lettering content-center text-soft max-md:w-full">{title}</span>
      <ul className="flex flex-wrap gap-x-4" aria-label={title}>
        {children}
      </ul>
    </div>
  );
}

function Choice({
  href,
  current,
  children,
}: {
  readonly href: string;
  readonly current: boolean;
  readonly children: string;
}) {
  return (
    <li>
      <Link
        href={href}
        prefetch={false}
        scroll={false}
        aria-current={current ? 'page' : undefined}
        className={`inline-flex min-h-8 items-center ${current ? 'font-bold' : 'link'}`}
      >
        {children}
      </Link>
    </li>
  );
}
