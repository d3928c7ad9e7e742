import { useEffect, useMemo, useRef, useState } from "react";
import type { ImportPlan } from "../../addin/chart/import/importPlan.ts";
import { survey as surveyOf } from "../../addin/chart/import/survey.ts";
import type { Survey } from "../../addin/chart/import/survey.ts";
import type { Edit } from "../../addin/workbook/port.ts";
import { checkFileSize } from "../../addin/workbook/tooLarge.ts";
import { failureText } from "../shell/notice.ts";
import { inSteps } from "./inSteps.ts";
import type { LayoutSettings, Prepared } from "./prepare.ts";
import { layOutRead, prepare, preparePatterns } from "./prepare.ts";
import { planEdits, rowsForNew } from "./planEdits.ts";
import type { ImportSource, ReadSource, SourceSettings } from "./readSource.ts";
import { openFile, readSource } from "./readSource.ts";
import type { PatternsAround } from "./rowProblems.ts";
import type { Destination, PatternsDestination } from "./useDestination.ts";
import { useDestination, usePatternsDestination } from "./useDestination.ts";
import { likeliestPart } from "./workbookParts.ts";

export interface ImportSettings extends SourceSettings, LayoutSettings {
  /** Name of the table of figures to import into, "" for a new one; the usual one where nobody has chosen. */
  readonly into?: string | undefined;
  /** The same of patterns. */
  readonly intoPatterns?: string | undefined;
}

const firstSettings: ImportSettings = {
  columns: new Map(),
  twins: { inChart: "skip", inFile: "keep both" },
  keepRefused: true,
};

/** What the import is busy with. */
export interface Progress {
  readonly doing: string;
  /** 0 to 1. */
  readonly share: number;
}

export interface Import {
  readonly source: ImportSource | undefined;
  readonly settings: ImportSettings;
  /** Where figures go. */
  readonly destination: Destination | undefined;
  /** Where the list goes: the same, or where patterns go. */
  readonly goal: Destination | PatternsDestination | undefined;
  readonly read: ReadSource | undefined;
  readonly prepared: Prepared | undefined;
  readonly survey: Survey | undefined;
  readonly progress: Progress | undefined;
  /** What went wrong with the source, in words. */
  readonly failure: string | undefined;
  openFile(file: File): Promise<void>;
  openText(text: string): void;
  change(settings: Partial<ImportSettings>): void;
  /** The edits of the import; `undefined` when it is not ready, or was cancelled meanwhile. */
  edits(): Promise<readonly Edit[] | undefined>;
  /** Stop and go back to the start; nothing has been changed. */
  clear(): void;
}

/** The import in the making: from what the user brought to what would be written. */
export function useImport(): Import {
  const [source, setSource] = useState<ImportSource>();
  const [settings, setSettings] = useState(firstSettings);
  const [read, setRead] = useState<ReadSource>();
  const [survey, setSurvey] = useState<Survey>();
  const [progress, setProgress] = useState<Progress>();
  const [failure, setFailure] = useState<string>();
  const opening = useRef(0);
  const destination = useDestination(settings.into);
  const { encoding, delimiter, part } = settings;

  useEffect(() => {
    setRead(undefined);
    if (!source) return undefined;
    return cancellable(setProgress, setFailure, async (signal) => {
      const pause = pauser("Reading the rows", setProgress);
      const result = await readSource(source, { encoding, delimiter, part }, pause, signal);
      if (!signal.aborted) setRead(result);
    });
  }, [source, encoding, delimiter, part]);

  const laid = useMemo(() => read && layOutRead(read, settings), [read, settings]);
  const isPatterns = laid?.what === "patterns";
  const wardrobe = usePatternsDestination(settings.intoPatterns, isPatterns);
  const goal = isPatterns ? wardrobe : destination;
  const around = useMemo((): PatternsAround | undefined => {
    if (!wardrobe?.wardrobe) return undefined;
    const { chart, classes, place } = wardrobe.wardrobe;
    return { chart, classes, cells: place.cells, unit: place.unit, tolerances: wardrobe.tolerances };
  }, [wardrobe]);
  const prepared = useMemo(() => {
    if (!source || !read || !laid) return undefined;
    const name = quotedName(source);
    if (isPatterns) return around && preparePatterns(name, laid, settings, around);
    return destination && prepare(name, read, settings, destination.present, laid);
  }, [source, read, laid, isPatterns, around, destination, settings]);

  const plan = prepared?.plan;
  useEffect(() => {
    setSurvey(undefined);
    if (!plan) return undefined;
    return cancellable(setProgress, setFailure, async (signal) => {
      const pause = pauser("Going through the readings", setProgress);
      const result = await inSteps(surveyOf(plan), pause, signal);
      if (!signal.aborted) setSurvey(result);
    });
  }, [plan]);

  function start(next: ImportSource | undefined): void {
    setFailure(undefined);
    setSettings({
      ...firstSettings,
      into: settings.into,
      intoPatterns: settings.intoPatterns,
      ...(next?.kind === "workbook" ? { part: likeliestPart(next.content) } : {}),
    });
    setSource(next);
  }

  return {
    source,
    settings,
    destination,
    goal,
    read,
    prepared,
    survey,
    progress,
    failure,
    openFile: async (file) => {
      const turn = ++opening.current;
      start(undefined);
      try {
        checkFileSize(file.size);
        const next = await openFile(file.name, new Uint8Array(await file.arrayBuffer()));
        if (turn === opening.current) start(next);
      } catch (error) {
        if (turn === opening.current) setFailure(failureText(error));
      }
    },
    openText: (text) => {
      opening.current++;
      start({ kind: "text", name: "The pasted text", text });
    },
    edits: async () => {
      if (!plan || !goal) return undefined;
      const turn = opening.current;
      const control = new AbortController();
      const pause = pauser("Putting the rows together", setProgress);
      try {
        const steps =
          plan.what === "patterns" && !goal.table
            ? inNewTable(plan, wardrobe, settings)
            : planEdits(plan, goal.table, goal.sheets, settings);
        return await inSteps(
          steps,
          async (share) => {
            await pause(share);
            if (turn !== opening.current) control.abort();
          },
          control.signal,
        );
      } catch (error) {
        if (!control.signal.aborted) setFailure(failureText(error));
        return undefined;
      } finally {
        setProgress(undefined);
      }
    },
    change: (changed) => {
      setSettings((before) => ({ ...before, ...changed }));
    },
    clear: () => {
      opening.current++;
      start(undefined);
    },
  };
}

function* inNewTable(
  plan: ImportPlan,
  destination: PatternsDestination | undefined,
  settings: ImportSettings,
): Generator<number, readonly Edit[]> {
  const { added, rows } = yield* rowsForNew(plan, settings);
  return destination?.newTable(added, rows) ?? [];
}

/** How the source is called at the beginning of a sentence. */
export function quotedName(source: ImportSource): string {
  return source.kind === "text" ? source.name : `“${source.name}”`;
}

/** Runs work that a change of the settings, or leaving, cancels. What fails is said; what is cancelled is not. */
function cancellable(
  setProgress: (progress: Progress | undefined) => void,
  setFailure: (failure: string | undefined) => void,
  work: (signal: AbortSignal) => Promise<void>,
): () => void {
  const control = new AbortController();
  work(control.signal)
    .catch((error: unknown) => {
      if (!control.signal.aborted) setFailure(failureText(error));
    })
    .finally(() => {
      if (!control.signal.aborted) setProgress(undefined);
    });
  return () => {
    control.abort();
    setProgress(undefined);
  };
}

/** Milliseconds of work between two breaths of the page. */
const breath = 50;

/** Lets the page draw and take clicks, and shows how far the work is, a few times a second. */
function pauser(doing: string, setProgress: (progress: Progress) => void): (share: number) => Promise<void> {
  let last = performance.now();
  return async (share) => {
    if (performance.now() - last < breath) return;
    setProgress({ doing, share });
    await new Promise((resolve) => {
      setTimeout(resolve);
    });
    last = performance.now();
  };
}
