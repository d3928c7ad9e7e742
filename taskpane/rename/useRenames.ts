import { useEffect, useRef, useState } from "react";
import type { WorkbookChange } from "../../addin/workbook/port.ts";
import { useSession } from "../shell/session.ts";
import type { Rename } from "./renames.ts";
import { namesColumns, readNames, renamesAfter } from "./renames.ts";

/**
 * The renames that wait for an answer. Only while there are some, or something was typed that may be one, are names read.
 *
 * @param heard all that was typed over another text since the pane was opened; grows at its end
 */
export function useRenames(heard: readonly WorkbookChange[]): {
  readonly renames: readonly Rename[];
  readonly drop: (rename: Rename) => void;
} {
  const { workbook, book } = useSession();
  const [renames, setRenames] = useState<readonly Rename[]>([]);
  const seen = useRef(0);
  const isWaiting = renames.length > 0;
  useEffect(() => {
    if (heard.length === seen.current && !isWaiting) return;
    let current = true;
    const look = async (): Promise<void> => {
      const columns = namesColumns(await workbook.tables());
      const names = await Promise.all(columns.map((column) => readNames(workbook, column)));
      if (!current) return;
      const news = heard.slice(seen.current);
      seen.current = heard.length;
      setRenames((before) => renamesAfter(before, news, columns, names));
    };
    // When the workbook cannot be read just now, the next change tells of it.
    look().catch(() => undefined);
    return () => {
      current = false;
    };
  }, [workbook, book, heard, isWaiting]);
  return {
    renames,
    drop: (rename) => {
      setRenames((before) => before.filter((each) => each !== rename));
    },
  };
}
