import { Button } from '../../_ui/button';
import { CONTROL } from '../../_ui/form/field';

/** Looks a food up among those in use, the own ones and the published tables. Works as a plain form. */
export function LookUp({ query }: { readonly query: string }) {
  return (
    <form action="/pantry" method="get" role="search" className="flex max-w-2xl gap-2 print:hidden">
      <label htmlFor="look-up-field" className="unseen">
        Food
      </label>
      <input
        id="look-up-field"
        name="q"
        type="search"
        defaultValue={query}
        maxLength={200}
        placeholder="barley cooked, skyr, zucchini"
        className={CONTROL}
      />
      <span className="shrink-0">
        <Button>Look up</Button>
      </span>
    </form>
  );
}
