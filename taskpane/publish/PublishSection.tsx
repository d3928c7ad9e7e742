import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import type { Publication } from "../../addin/publish/publication.ts";
import { usualPublication } from "../../addin/publish/publication.ts";
import type { PublicationAtWork } from "../../addin/publish/published.ts";
import { download, handedOver } from "../drawing/download.ts";
import { fileNameOf } from "../drawing/fileName.ts";
import { failureText } from "../shell/notice.ts";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { SavePageBox } from "../saving/SavePageBox.tsx";
import { useSession } from "../shell/session.ts";
import { WriteBox } from "../shell/WriteBox.tsx";
import { FailureBox } from "../ui/FailureBox.tsx";
import { ListingPart } from "./ListingPart.tsx";
import { isoDay } from "../ui/words.ts";
import { rememberPublished } from "./history.ts";
import { pageFile } from "./pageFile.ts";
import { Preview } from "./Preview.tsx";
import { PublicationSettings } from "./PublicationSettings.tsx";
import { SincePart } from "./SincePart.tsx";
import type { ToPublish } from "./usePublishing.ts";
import { usePublishing } from "./usePublishing.ts";
import { planChart, rememberEdits } from "./writeChart.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  row: { display: "flex", flexWrap: "wrap", gap: "8px", alignItems: "center" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
});

const forms = {
  values: "As they are now, as on the page",
  formulas: "As formulas that follow the chart and the patterns",
} as const;

/** What buyers read: the chart and the patterns as a page, as sheets, and as words under a pattern. */
export function PublishSection(): ReactNode {
  const styles = useStyles();
  const { say, services, workbook, apply, working } = useSession();
  const [chosen, setChosen] = useState<Publication>();
  const [saving, setSaving] = useState<{ readonly name: string; readonly page: string }>();
  const [isSetting, setSetting] = useState(false);
  const found = usePublishing(chosen);
  const publication = chosen ?? found?.usual ?? usualPublication;

  /** Says what is done, and what has to be said of remembering it. The file is saved, whatever comes of that. */
  async function published({ lookAgain }: ToPublish, work: PublicationAtWork, done: string): Promise<void> {
    const trouble = await rememberPublished(workbook, work, isoDay(new Date()), publication).catch(
      (error: unknown) => `The workbook could not remember what was published: ${failureText(error)}`,
    );
    lookAgain();
    const text = [done, trouble].filter((words) => words !== "").join(" ");
    if (text !== "") say({ kind: "done", text });
  }

  async function savePage(found: ToPublish): Promise<void> {
    const { workNow, tolerances } = found;
    try {
      const work = workNow();
      if (!work) return;
      const page = await pageFile(work, tolerances);
      const name = `${fileNameOf(work.published.title)}.html`;
      if (services.keepsDownloads) {
        download(name, page, "text/html;charset=utf-8");
        await published(
          found,
          work,
          `${handedOver(name)} It holds ${sizeWords(page)} and needs nothing else.`,
        );
      } else {
        setSaving({ name, page });
        await published(found, work, "");
      }
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  }

  async function savePdf(found: ToPublish): Promise<void> {
    setSetting(true);
    try {
      const work = found.workNow();
      if (!work) return;
      const { pdfFile } = await import("./pdf/pdfFile.ts");
      const pdf = await pdfFile(work.published);
      const name = `${fileNameOf(work.published.title)}.pdf`;
      download(name, pdf, "application/pdf");
      await published(found, work, services.keepsDownloads ? handedOver(name) : mayHaveArrived(name));
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    } finally {
      setSetting(false);
    }
  }

  async function remember({ remembered, sheets }: ToPublish): Promise<void> {
    const isDone = await apply(
      "Remember what is published",
      rememberEdits(publication, { table: remembered.table, sheets }),
      { kind: "done", text: "The workbook remembers what you publish, in its table Publication." },
    );
    if (isDone) setChosen(undefined);
  }

  const primary = found && {
    label: "Save page",
    disabled: !found.work,
    run: () => void savePage(found),
  };

  return (
    <SectionFrame title="Publish" primary={primary}>
      {!found && <p className={styles.text}>Reading what there is to publish …</p>}
      {found?.failure !== undefined && (
        <FailureBox what="Cannot be published like this." why={found.failure} />
      )}
      {found?.remembered.failure !== undefined && (
        <FailureBox what="What was remembered cannot be used." why={found.remembered.failure} />
      )}
      {found?.sinceFailure !== undefined && (
        <FailureBox what="What changed cannot be told." why={found.sinceFailure} />
      )}
      {found?.since && <SincePart since={found.since} />}
      {found?.work && <Preview work={found.work} />}
      {found?.work && (
        <div className={styles.row}>
          <Button disabledFocusable={isSetting || working !== undefined} onClick={() => void savePdf(found)}>
            Save as PDF
          </Button>
          {isSetting && (
            <p className={styles.quiet} role="status">
              Setting the pages …
            </p>
          )}
        </div>
      )}
      {saving && (
        <SavePageBox
          {...saving}
          onClose={() => {
            setSaving(undefined);
          }}
        />
      )}
      {found?.chart && (
        <>
          <PublicationSettings
            chart={found.chart}
            patterns={found.patterns}
            tolerances={found.tolerances}
            publication={publication}
            onChange={setChosen}
          />
          <div className={styles.row}>
            <Button
              disabledFocusable={working !== undefined || isRemembered(found, publication)}
              onClick={() => void remember(found)}
            >
              Remember for next time
            </Button>
            <p className={styles.quiet}>
              {isRemembered(found, publication)
                ? "The workbook remembers these settings."
                : "These settings are not in the workbook yet."}
            </p>
          </div>
        </>
      )}
      {found?.work && found.work.published.patterns.length > 0 && (
        <ListingPart published={found.work.published} since={found.since} />
      )}
      {found?.work && (
        <WriteBox
          title="Write sheets with the chart and the patterns"
          forms={forms}
          plan={(form) => planChart(form, { ...found, chart: found.chart!, work: found.work! })}
          asked={0}
        />
      )}
    </SectionFrame>
  );
}

function isRemembered({ remembered }: ToPublish, publication: Publication): boolean {
  return (
    remembered.publication !== undefined &&
    JSON.stringify(remembered.publication) === JSON.stringify(publication)
  );
}

function sizeWords(page: string): string {
  return `${String(Math.ceil(new TextEncoder().encode(page).length / 1000))} kB`;
}

/** In Excel nobody can see whether a download arrives. */
function mayHaveArrived(name: string): string {
  return `The file ${name} is offered to Excel, which does not say whether it kept it. If it is not among your downloads, print the page as a PDF instead.`;
}
