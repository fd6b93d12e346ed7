/**
 * Keeps the last value made for each name, as long as what it was made from stays the same. A stand that is
 * dragged makes its own numbers anew and leaves those of the others.
 *
 * @returns get(name, madeFrom, make): `madeFrom` is compared as text
 * @source own-rule
 */
export function createMemo<Value>(): (name: string, madeFrom: string, make: () => Value) => Value {
  const kept = new Map<string, { readonly madeFrom: string; readonly value: Value }>();
  return (name, madeFrom, make) => {
    const known = kept.get(name);
    if (known?.madeFrom === madeFrom) return known.value;
    const value = make();
    kept.set(name, { madeFrom, value });
    return value;
  };
}
