/**
 * How long the built page takes to open, in a browser without a screen: the first visit, with the demo, and again, with what was
 * kept; beside it the floor, an empty page with the grid’s library alone. Wall time, and processor time of the page’s
 * main thread, which is what one waits for on a machine with nothing else to do; at the end that of the page’s whole process,
 * which also reads scripts and paints beside the main thread. Medians of visits, each with a browser profile of its own.
 *
 *   node --import tsx tests/bench/opening.ts
 */
import { createServer } from "node:http";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import os from "node:os";
import path from "node:path";
import { build } from "esbuild";
import type { BrowserContext, CDPSession } from "playwright-core";
import sirv from "sirv";
import { findBrowser } from "../programs.mjs";
import { newVisitor } from "../browser/page.ts";
import { startPage } from "../browser/startPage.ts";

const visits = 5;
const moments = ["pane seen", "pane usable", "grid drawn", "all calculated"] as const;

type Moment = (typeof moments)[number];

interface Times {
  readonly wall: number;
  readonly processor: number;
}

/** What runs in the page before all else. */
interface Script {
  readonly content: string;
}

interface Visit {
  readonly moments: Partial<Record<Moment, Times>>;
  /** Processor time of the page’s process until the last moment, ms. */
  readonly process: number;
}

interface TraceEvent {
  readonly name: string;
  /** Microseconds: of the clock, and of the thread’s own processor time. */
  readonly ts: number;
  readonly tts?: number;
}

const minified = {
  bundle: true,
  minify: true,
  target: "es2022",
  define: { "process.env.NODE_ENV": '"production"' },
  logLevel: "error",
} as const;

if (findBrowser()) {
  const marks = await marksScript();
  console.log("\nOpening the page, ms: wall time / processor time of its main thread, medians");
  await ourPage(marks);
  await floor(marks);
} else console.log("\nOpening the page: no browser was found; npm test fetches one.");

async function ourPage(marks: Script): Promise<void> {
  const { address, stop } = await startPage();
  const first: Visit[] = [];
  const again: Visit[] = [];
  try {
    for (let i = 0; i < visits; i++) {
      const visitor = await newVisitor(undefined, { keepsPage: true });
      await visitor.context.addInitScript(marks);
      first.push(await visit(visitor.context, address, "all calculated"));
      again.push(await visit(visitor.context, address, "all calculated"));
      await visitor.close();
    }
  } finally {
    stop();
  }
  print("first visit, the demo", first);
  print("again, what was kept", again);
}

async function floor(marks: Script): Promise<void> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "measure-book-floor-"));
  const { address, stop } = await builtFloor(folder);
  const empty: Visit[] = [];
  try {
    for (let i = 0; i < visits; i++) {
      const visitor = await newVisitor();
      await visitor.context.addInitScript(marks);
      empty.push(await visit(visitor.context, address, "grid drawn"));
      await visitor.close();
    }
  } finally {
    stop();
    rmSync(folder, { recursive: true, force: true });
  }
  print("the grid’s library alone, one cell", empty);
}

function source(name: string): string {
  return path.join(import.meta.dirname, "opening", name);
}

async function marksScript(): Promise<Script> {
  const { outputFiles } = await build({
    ...minified,
    entryPoints: [source("marks.ts")],
    format: "iife",
    write: false,
  });
  return { content: outputFiles[0]!.text };
}

async function builtFloor(folder: string): Promise<{ readonly address: string; stop(): void }> {
  await build({
    ...minified,
    entryPoints: [source("floor.ts")],
    format: "esm",
    splitting: true,
    outdir: folder,
  });
  writeFileSync(
    path.join(folder, "index.html"),
    '<!doctype html><meta charset="utf-8"><link rel="stylesheet" href="floor.css"><style>#root { height: 100vh }</style><div id="root"></div><script type="module" src="floor.js"></script>',
  );
  const server = createServer(sirv(folder));
  await new Promise<void>((resolve) => server.listen(0, "localhost", resolve));
  return {
    address: `http://localhost:${String((server.address() as AddressInfo).port)}/`,
    stop: () => {
      server.close();
    },
  };
}

/** Opens the page and waits for a moment; gives the times of all that came. */
async function visit(context: BrowserContext, address: string, last: Moment): Promise<Visit> {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Performance.enable");
  const stopTrace = await startTrace(session);
  const reached = page.waitForEvent("console", {
    predicate: (message) => message.text() === `measure-book ${last}`,
    timeout: 90_000,
  });
  await page.goto(address);
  await reached;
  const { metrics } = await session.send("Performance.getMetrics");
  const events = await stopTrace();
  // What is done once all is there, keeping the workbook and the page, is not to meet the next visit.
  if (last === "all calculated")
    await page.evaluate(() => navigator.serviceWorker.ready.then(({ scope }) => scope));
  await page.waitForTimeout(2000);
  await page.close();
  const at = (name: string) => events.findLast((event) => event.name === `measure-book ${name}`);
  const begun = at("begun");
  const times = (moment: Moment): Times | undefined => {
    const event = at(moment);
    if (!begun || event?.tts === undefined || begun.tts === undefined) return undefined;
    return { wall: (event.ts - begun.ts) / 1000, processor: (event.tts - begun.tts) / 1000 };
  };
  return {
    moments: Object.fromEntries(moments.map((moment) => [moment, times(moment)])),
    process: 1000 * (metrics.find(({ name }) => name === "ProcessTime")?.value ?? NaN),
  };
}

/** Records the marks that the page sets, with the processor time at which each was set. */
async function startTrace(session: CDPSession): Promise<() => Promise<readonly TraceEvent[]>> {
  const events: TraceEvent[] = [];
  session.on("Tracing.dataCollected", ({ value }) => {
    events.push(...(value as unknown as TraceEvent[]));
  });
  await session.send("Tracing.start", {
    transferMode: "ReportEvents",
    traceConfig: { includedCategories: ["blink.user_timing"], excludedCategories: ["*"] },
  });
  return async () => {
    const complete = new Promise((resolve) => session.once("Tracing.tracingComplete", resolve));
    await session.send("Tracing.end");
    await complete;
    return events;
  };
}

function print(what: string, all: readonly Visit[]): void {
  const cells = moments.flatMap((moment) => {
    const found = all.flatMap((each) => each.moments[moment] ?? []);
    if (found.length === 0) return [];
    const of = (kind: keyof Times): string => median(found.map((each) => each[kind])).toFixed(0);
    return [`${moment} ${of("wall")} / ${of("processor")}`];
  });
  const process = median(all.map((each) => each.process)).toFixed(0);
  console.log(`  ${what}: ${cells.join(", ")}; whole process ${process}`);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
