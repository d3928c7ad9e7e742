import { useEffect, useState } from "react";
import type { Fitting, Match } from "../../addin/fit/match.ts";
import { inSteps } from "../import/inSteps.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { matchInSteps } from "./matrix.ts";

/** How far the judging of all pairs is. */
export interface Matching {
  /** The last one that was finished; it may be of an earlier state of the tables. */
  readonly match: Match | undefined;
  /** Share done, 0 to 1, while the page shows nothing newer. */
  readonly share: number;
  /** Why it could not be finished, in words. */
  readonly failure?: string;
}

/** Work without a pause, in ms: short enough that a click is not felt to wait. */
const atOnceMs = 50;

/** Where the match of a fitting is kept once it is finished. */
function matchOf(): { match?: Match } {
  return {};
}

/**
 * Judges every pair, with pauses in which the page can be used; begins anew when the tables change, and not when they are the
 * same as before.
 */
export function useMatch(fitting: Fitting | undefined): Matching {
  const kept = useSession().book.once(matchOf, fitting);
  const [matching, setMatching] = useState<Matching>({ match: undefined, share: 0 });
  const { match: known } = kept;
  useEffect(() => {
    if (known) {
      setMatching({ match: known, share: 1 });
      return undefined;
    }
    if (!fitting) {
      setMatching({ match: undefined, share: 0 });
      return undefined;
    }
    const stop = new AbortController();
    let paused = performance.now();
    const pause = async (share: number): Promise<void> => {
      if (performance.now() - paused < atOnceMs) return;
      setMatching(({ match }) => ({ match, share }));
      await new Promise((resume) => setTimeout(resume));
      paused = performance.now();
    };
    inSteps(matchInSteps(fitting), pause, stop.signal).then(
      (match) => {
        if (stop.signal.aborted) return;
        kept.match = match;
        setMatching({ match, share: 1 });
      },
      (error: unknown) => {
        if (!stop.signal.aborted) {
          setMatching({ match: undefined, share: 1, failure: failureText(error) });
        }
      },
    );
    return () => {
      stop.abort();
    };
  }, [fitting, kept, known]);
  return known ? { match: known, share: 1 } : matching;
}
