import { Button, Field, SearchBox, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useState } from "react";
import { descriptors } from "../../functions/all.ts";
import type { FunctionDescriptor } from "../../functions/descriptor.ts";
import { signature } from "../../functions/reference.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { failureText } from "../shell/notice.ts";
import { SectionFrame } from "../shell/SectionFrame.tsx";
import { useSession } from "../shell/session.ts";
import { StartSwitch } from "./StartSwitch.tsx";
import { count } from "../ui/words.ts";

const useStyles = makeStyles({
  text: { margin: 0 },
  code: { fontFamily: tokens.fontFamilyMonospace, overflowWrap: "anywhere" },
  list: {
    listStyleType: "none",
    margin: 0,
    padding: 0,
    display: "flex",
    flexDirection: "column",
    gap: "8px",
  },
  arguments: { margin: 0, display: "flex", flexDirection: "column", gap: "4px" },
  help: { margin: 0, color: tokens.colorNeutralForeground2 },
  aside: { alignSelf: "flex-start" },
});

/** The worksheet functions: what each gives, what it takes, an example; and what a cell’s error says. */
export function FunctionsSection(): ReactNode {
  const styles = useStyles();
  const [wanted, setWanted] = useState("");
  const found = descriptors.filter((descriptor) => matches(descriptor, wanted));
  return (
    <SectionFrame title="Functions">
      <p className={styles.text}>
        Type these into any cell, as you would SUM. Lengths come out in the unit of their column.
      </p>
      <StartSwitch />
      <ErrorOfCell />
      <Field
        label="Search"
        hint={wanted === "" ? "By name or by what it does." : `${count(found.length, "function")} found.`}
      >
        <SearchBox
          value={wanted}
          onChange={(_, data) => {
            setWanted(data.value);
          }}
        />
      </Field>
      <ul className={styles.list}>
        {found.map((descriptor) => (
          <li key={descriptor.name}>
            <FunctionHelp descriptor={descriptor} />
          </li>
        ))}
      </ul>
    </SectionFrame>
  );
}

function FunctionHelp({ descriptor }: { readonly descriptor: FunctionDescriptor }): ReactNode {
  const styles = useStyles();
  const { name, summary, details, parameters, examples, source } = descriptor;
  const [example] = examples;
  return (
    <Disclosure title={name} says={summary}>
      <code className={styles.code}>={signature(descriptor)}</code>
      <dl className={styles.arguments}>
        {parameters.map((parameter) => (
          <div key={parameter.name}>
            <dt className={styles.code}>
              {parameter.name}
              {parameter.optional ? " (may be left out)" : ""}
            </dt>
            <dd className={styles.help}>{parameter.help}</dd>
          </div>
        ))}
      </dl>
      {details !== undefined && <p className={styles.help}>{details}</p>}
      {example && (
        <p className={styles.text}>
          Example: <code className={styles.code}>={example.formula}</code>
        </p>
      )}
      {source !== undefined && <p className={styles.help}>Source: {source}</p>}
    </Disclosure>
  );
}

/** Where the spreadsheet does not show what an error means, the pane says it. */
function ErrorOfCell(): ReactNode {
  const styles = useStyles();
  const { workbook, say } = useSession();
  if (!workbook.errorAt) return null;
  const ask = async (): Promise<void> => {
    try {
      const { area } = await workbook.readSelection();
      const message = workbook.errorAt?.({ sheet: area.sheet, row: area.row, column: area.column });
      say(
        message === undefined
          ? { kind: "done", text: "The selected cell shows no error of these functions." }
          : { kind: "failed", text: message },
      );
    } catch (error) {
      say({ kind: "failed", text: failureText(error) });
    }
  };
  return (
    <Button className={styles.aside} onClick={() => void ask()}>
      Explain the error in the selected cell
    </Button>
  );
}

function matches({ name, summary, details = "", parameters }: FunctionDescriptor, wanted: string): boolean {
  const text = [name, summary, details, ...parameters.map((p) => p.name)].join(" ").toLowerCase();
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
