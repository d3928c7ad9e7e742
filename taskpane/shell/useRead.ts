import { useEffect, useState } from "react";
import type { Workbook } from "../../addin/workbook/port.ts";
import { useSession } from "./session.ts";

/**
 * What is read from the workbook, kept up to date while the section is shown; `undefined` until it is read for the first time.
 *
 * @param read never rejects: what fails is said in its result
 * @param chosen what the user chose to read; read anew when it is another one
 */
export function useRead<T, C>(read: (workbook: Workbook, chosen: C) => Promise<T>, chosen: C): T | undefined {
  const { workbook, version } = useSession();
  const [result, setResult] = useState<T>();
  useEffect(() => {
    let current = true;
    void read(workbook, chosen).then((next) => {
      if (current) setResult(next);
    });
    return () => {
      current = false;
    };
  }, [workbook, version, read, chosen]);
  return result;
}
