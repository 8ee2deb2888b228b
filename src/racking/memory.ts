/** Answers that are asked for again and again, such as by controls that are moved to and fro. */

const REMEMBERED = 2000;

/** A function's answers by key, the oldest forgotten first. */
export function memory<T>(): (key: string, make: () => T) => T {
  const known = new Map<string, T>();
  return (key, make) => {
    const old = known.get(key);
    if (old !== undefined) return old;
    const answer = make();
    if (known.size >= REMEMBERED) known.delete(known.keys().next().value!);
    known.set(key, answer);
    return answer;
  };
}
