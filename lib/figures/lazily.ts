type Works = Readonly<Record<string, () => unknown>>;
type Done<W extends Works> = { readonly [Name in keyof W]: ReturnType<W[Name]> };

/**
 * Properties that are worked out when they are first read, and once. They are the object's own, so what lists, copies
 * or compares it finds them. All objects share one accessor by name: a getter of an object's own is long-lived for the
 * machine from its first moment, and with it everything that it sees, until memory is cleared to the ground.
 */
class Lazy {
  readonly #works: Works;
  readonly #done: Record<string, unknown> = {};

  constructor(works: Works) {
    this.#works = works;
  }

  static read(of: Lazy, name: string): unknown {
    const known = of.#done[name];
    return known === undefined ? (of.#done[name] = of.#works[name]?.()) : known;
  }
}

const accessors = new Map<string, PropertyDescriptor>();

function accessorOf(name: string): PropertyDescriptor {
  const known = accessors.get(name);
  if (known) return known;
  const accessor: PropertyDescriptor = {
    enumerable: true,
    get(this: Lazy) {
      return Lazy.read(this, name);
    },
  };
  accessors.set(name, accessor);
  return accessor;
}

/**
 * An object with properties that stand and properties that are worked out when they are first read.
 * @example lazily({ title: 'Stew' }, { whole: () => addUp(all) }).whole // added up here, once
 */
export function lazily<P extends object, W extends Works>(plain: P, works: W): P & Done<W> {
  const lazy = Object.assign(new Lazy(works), plain);
  for (const name in works) Object.defineProperty(lazy, name, accessorOf(name));
  return lazy as unknown as P & Done<W>;
}
