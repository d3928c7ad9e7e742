import { Button, Switch, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useMemo, useRef, useState } from "react";
import { InputError } from "../../addin/measures/inputError.ts";
import { failureText } from "../shell/notice.ts";
import { PlainTable } from "../ui/PlainTable.tsx";
import { meaning } from "../ui/theme.ts";
import { useSession } from "../shell/session.ts";
import type { Saving } from "../saving/SaveBox.tsx";
import { SaveBox } from "../saving/SaveBox.tsx";
import { DrawingWordsContext } from "./Drawing.tsx";
import { download, handedOver } from "./download.ts";
import { svgPicture } from "./svgPicture.ts";
import { svgText } from "./svgText.ts";
import { useWidth } from "./useWidth.ts";

const useStyles = makeStyles({
  frame: { margin: 0, display: "flex", flexDirection: "column", gap: "8px" },
  caption: { display: "flex", flexDirection: "column", gap: "4px" },
  title: { margin: 0, fontSize: tokens.fontSizeBase300, fontWeight: 600, overflowWrap: "anywhere" },
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
  ground: {
    // In rem, so that the drawing hears of other letters.
    padding: "0.5rem",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  paper: { minWidth: 0, overflow: "hidden" },
  wide: { overflowX: "auto", "&:focus-visible": { outline: `2px solid ${meaning.chalk}` } },
  actions: { display: "flex", flexWrap: "wrap", gap: "8px" },
});

export interface DrawingTable {
  readonly headings: readonly string[];
  /** Words, a name in the first cell of each row. */
  readonly rows: readonly (readonly string[])[];
}

/** The narrowest that any drawing is laid out for, in its units: below, with large letters on a narrow page, it slides sideways. */
const narrowest = 232;

/**
 * A drawing with its title, what it shows in words, the same as a table, and a way to save it.
 *
 * The drawing is one `Drawing`, or any one svg element, as wide as the frame: as a function it is told the width in units of a
 * drawing, so that letters keep their size in a pane of any width.
 */
export function DrawingFrame(props: {
  readonly title: string;
  /** One or two sentences: what is to be seen. Read by screen readers, shown as caption. */
  readonly description: string;
  /** Name of the saved file without its ending. */
  readonly fileName: string;
  readonly table: DrawingTable;
  /** What the drawing is not, such as a pattern ready to cut. */
  readonly note?: string | undefined;
  /** The text of the file where it is another than the drawing on screen, such as one that is true to size. */
  readonly exportSvg?: (() => string) | undefined;
  readonly children: ReactNode | ((width: number) => ReactNode);
}): ReactNode {
  const styles = useStyles();
  const { say, services } = useSession();
  const { title, description, fileName, table, note, exportSvg, children } = props;
  const [asTable, setAsTable] = useState(false);
  const [saving, setSaving] = useState<Saving>();
  const [measured, width] = useWidth();
  const paper = useRef<HTMLDivElement>(null);
  const slides = typeof children === "function" && width > 0 && width < narrowest;
  const words = useMemo(() => ({ title, description }), [title, description]);

  function drawn() {
    const drawing = paper.current?.querySelector("svg");
    if (!drawing)
      throw new InputError("The drawing is not in sight. Turn off “Show as table”, then save it.");
    return svgText(drawing, title, description);
  }
  async function save(ending: "svg" | "png"): Promise<void> {
    try {
      const isPicture = ending === "png";
      const picture = isPicture ? await svgPicture(drawn()) : undefined;
      const svg = !isPicture && exportSvg ? exportSvg() : drawn().text;
      if (services.keepsDownloads) {
        const name = `${fileName}.${ending}`;
        download(name, picture ?? svg, isPicture ? "image/png" : "image/svg+xml");
        say({ kind: "done", text: handedOver(name) });
      } else setSaving({ name: fileName, svg, as: ending, ...(picture && { picture }) });
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  }

  return (
    <figure className={styles.frame}>
      <figcaption className={styles.caption}>
        <h3 className={styles.title}>{title}</h3>
        <p className={styles.text}>{description}</p>
        {note !== undefined && <p className={styles.quiet}>{note}</p>}
      </figcaption>
      <Switch
        label="Show as table"
        checked={asTable}
        onChange={(_, data) => {
          setAsTable(data.checked);
        }}
      />
      {asTable ? (
        <PlainTable label={title} headings={table.headings} rows={table.rows} />
      ) : (
        <div className={styles.ground}>
          <div ref={measured}>
            <div
              ref={paper}
              className={mergeClasses(styles.paper, slides && styles.wide)}
              {...(slides && { tabIndex: 0, role: "group", "aria-label": `${title}, slides sideways` })}
            >
              <DrawingWordsContext value={words}>
                {typeof children === "function"
                  ? width > 0 && children(Math.max(width, narrowest))
                  : children}
              </DrawingWordsContext>
            </div>
          </div>
          {slides && <p className={styles.quiet}>Slide it sideways to see the rest.</p>}
        </div>
      )}
      <div className={styles.actions}>
        {(!asTable || exportSvg) && (
          <Button size="small" onClick={() => void save("svg")}>
            Save as SVG
          </Button>
        )}
        {!asTable && (
          <Button size="small" onClick={() => void save("png")}>
            Save as picture
          </Button>
        )}
      </div>
      {saving && (
        <SaveBox
          saving={saving}
          onClose={() => {
            setSaving(undefined);
          }}
        />
      )}
    </figure>
  );
}
