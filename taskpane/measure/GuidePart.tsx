import { Button, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { download, handedOver } from "../drawing/download.ts";
import { SavePageBox } from "../saving/SavePageBox.tsx";
import { sha256 } from "../saving/sha256.ts";
import { failureText } from "../shell/notice.ts";
import { useSession } from "../shell/session.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { count } from "../ui/words.ts";
import type { GuidePaper } from "./guidePage.ts";
import {
  guideContent,
  guideFile,
  guideMeasures,
  guidePageRule,
  guidePapers,
  guideStyle,
  guideStyles,
} from "./guidePage.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

const fileName = "how-to-measure.html";

/** The measures of the chart with their drawings, to lie beside the tape: printed, or as a page of its own. */
export function GuidePart({ chart }: { readonly chart: Chart }): ReactNode {
  const styles = useStyles();
  const { services, say } = useSession();
  const [paper, setPaper] = useState<GuidePaper>("A4");
  const [page, setPage] = useState<string>();
  const measures = guideMeasures(chart);
  const book = services.bookName?.();

  async function save(): Promise<void> {
    try {
      const file = guideFile(measures, paper, await sha256(guideStyles(paper)), book);
      if (services.keepsDownloads) {
        download(fileName, file, "text/html;charset=utf-8");
        say({ kind: "done", text: handedOver(fileName) });
      } else setPage(file);
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  }

  return (
    <Disclosure title="Measuring guide to print" says={count(measures.length, "measure")}>
      {measures.length === 0 ? (
        <p className={styles.text}>
          None of the chart’s measures is known here by its name, so that there is no drawing of it.
        </p>
      ) : (
        <>
          <p className={styles.text}>
            Each measure of your chart with its drawing, how to take it, and room for three readings.
          </p>
          <Choice
            label="Paper"
            value={paper}
            options={guidePapers.map((each) => [each, each] as const)}
            onChoose={(next) => {
              setPaper(next);
              setPage(undefined);
            }}
          />
          <div className={styles.actions}>
            {services.keepsDownloads && (
              <Button
                onClick={() => {
                  printGuide(guideContent(measures, book).html, paper);
                }}
              >
                Print the guide
              </Button>
            )}
            <Button onClick={() => void save()}>Save it as a page</Button>
          </div>
          {page !== undefined && (
            <SavePageBox
              name={fileName}
              page={page}
              onClose={() => {
                setPage(undefined);
              }}
            />
          )}
        </>
      )}
    </Disclosure>
  );
}

/** Prints the guide alone: while the browser prints, it stands in the page in the place of all else. */
function printGuide(content: string, paper: GuidePaper): void {
  const host = document.createElement("section");
  host.className = "printed-guide";
  // Apart from the page’s own styles. All text in it was escaped when it was made.
  const root = host.attachShadow({ mode: "open" });
  root.innerHTML = `<style>${guideStyle}</style>${content}`;
  const rule = document.createElement("style");
  rule.textContent = guidePageRule(paper);
  const after = (): void => {
    host.remove();
    rule.remove();
    window.removeEventListener("afterprint", after);
  };
  window.addEventListener("afterprint", after);
  document.head.append(rule);
  document.body.append(host);
  window.print();
}
