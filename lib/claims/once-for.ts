/**
 * Something that is worked out of a thing and of what it is looked up in, once for each pair: neither ever changes, and
 * many statements ask for the same.
 * @example const countsOf = onceFor((recipe: Recipe, amounts: AmountContext) => portionCounts(recipe, amounts))
 */
export function onceFor<Thing extends object, Context extends object, Made>(
  work: (thing: Thing, context: Context) => Made,
): (thing: Thing, context: Context) => Made {
  const kept = new WeakMap<Context, Map<Thing, { readonly made: Made }>>();
  return (thing, context) => {
    const own = kept.get(context) ?? new Map<Thing, { readonly made: Made }>();
    kept.set(context, own);
    const known = own.get(thing) ?? { made: work(thing, context) };
    own.set(thing, known);
    return known.made;
  };
}
