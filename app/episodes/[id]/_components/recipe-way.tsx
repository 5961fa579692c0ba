import Link from 'next/link';

/** The way to a dish from the recipe data of a page. */
export function RecipeWay({ episodeId }: { readonly episodeId: string }) {
  return (
    <Link
      className="link inline-flex min-h-11 items-center print:hidden"
      href={`/episodes/${episodeId}/edit/recipe`}
    >
      Recipe from a page
    </Link>
  );
}
