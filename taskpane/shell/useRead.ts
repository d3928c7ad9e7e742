import { useEffect, useState } from "react";
import { haveSameItems } from "../../addin/chart/workOnce.ts";
import type { Book } from "./book.ts";
import { useSession } from "./session.ts";

/**
 * What is read from the book, kept up to date while the section is shown; `undefined` until it is read for the first time. It
 * stays the same object while each of its parts does.
 *
 * @param read never rejects: what fails is said in its result, and read again when the section is shown again
 * @param chosen what the user chose to read; read anew when it is another one
 */
export function useRead<T extends object, C>(
  read: (book: Book, chosen: C) => Promise<T>,
  chosen: C,
): T | undefined {
  const { book, isShown } = useSession();
  const [result, setResult] = useState<T>();
  useEffect(() => {
    if (!isShown) return undefined;
    let current = true;
    void read(book, chosen).then((next) => {
      if (current) setResult((before) => (before && haveSameParts(before, next) ? before : next));
    });
    return () => {
      current = false;
    };
  }, [book, isShown, read, chosen]);
  return result;
}

function haveSameParts(one: object, other: object): boolean {
  return (
    haveSameItems(Object.keys(one), Object.keys(other)) &&
    haveSameItems(Object.values(one), Object.values(other))
  );
}
