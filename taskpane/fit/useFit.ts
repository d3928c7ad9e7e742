import { useEffect, useState } from "react";
import { useSession } from "../session.ts";
import type { ChosenTables } from "./fitTables.ts";
import type { Fit } from "./readFit.ts";
import { readFit } from "./readFit.ts";

/** What the workbook holds for the fit of garments, kept up to date. `undefined` until it is read for the first time. */
export function useFit(chosen: ChosenTables): Fit | undefined {
  const { workbook, version } = useSession();
  const [fit, setFit] = useState<Fit>();
  useEffect(() => {
    let current = true;
    void readFit(workbook, chosen).then((next) => {
      if (current) setFit(next);
    });
    return () => {
      current = false;
    };
  }, [workbook, version, chosen]);
  return fit;
}
