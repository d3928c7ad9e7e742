import { Button, Field, Textarea, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { DragEvent, ReactNode, Ref } from "react";
import { useState } from "react";
import { meaning } from "../ui/theme.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  drop: {
    padding: "16px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px dashed ${tokens.colorNeutralStrokeAccessible}`,
    display: "flex",
    flexDirection: "column",
    gap: "8px",
    alignItems: "flex-start",
  },
  over: { backgroundColor: meaning.chalkGround },
  read: { alignSelf: "flex-start" },
  rows: { fontFamily: tokens.fontFamilyMonospace, minHeight: "112px" },
});

/** The empty state: says what to bring, and takes a file, pasted rows or a dropped file. */
export function SourceChooser(props: {
  readonly input: Ref<HTMLInputElement>;
  readonly onFile: (file: File) => void;
  readonly onText: (text: string) => void;
}): ReactNode {
  const styles = useStyles();
  const [pasted, setPasted] = useState("");
  const [over, setOver] = useState(false);
  const drag = (event: DragEvent, isOver: boolean): void => {
    event.preventDefault();
    setOver(isOver);
  };
  return (
    <>
      <p className={styles.text}>
        Bring your measurement chart, one row a figure, or the list of your patterns, one row each. You see
        everything before anything is stored.
      </p>
      <div
        className={mergeClasses(styles.drop, over && styles.over)}
        onDragOver={(event) => {
          drag(event, true);
        }}
        onDragLeave={(event) => {
          drag(event, false);
        }}
        onDrop={(event) => {
          drag(event, false);
          const [file] = event.dataTransfer.files;
          if (file) props.onFile(file);
        }}
      >
        <input
          ref={props.input}
          type="file"
          hidden
          aria-label="Chart file"
          accept=".csv,.tsv,.tab,.txt,.xlsx"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file) props.onFile(file);
            event.target.value = "";
          }}
        />
        <span>
          Choose a file above, or drop it here.
          <br />A workbook (.xlsx), or a list saved as CSV or TSV
        </span>
      </div>
      <Field label="Or paste rows, headings first">
        <Textarea
          resize="vertical"
          textarea={{ className: styles.rows, wrap: "off" }}
          value={pasted}
          onChange={(_, data) => {
            setPasted(data.value);
          }}
        />
      </Field>
      <Button
        className={styles.read}
        disabledFocusable={pasted.trim() === ""}
        onClick={() => {
          props.onText(pasted);
        }}
      >
        Read the pasted rows
      </Button>
    </>
  );
}
