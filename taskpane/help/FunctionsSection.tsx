import { Button, Field, SearchBox, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { lazy, Suspense, useMemo, useState } from "react";
import type { FunctionDescriptor } from "../../functions/descriptor.ts";
import { functionsFor, questions } from "../../functions/questions.ts";
import { signature } from "../../functions/reference.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { Part } from "../ui/Part.tsx";
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
  heading: { margin: 0, fontSize: "inherit", fontWeight: 600 },
  aside: { alignSelf: "flex-start" },
});

// Only what is opened works anything out.
const LiveExample = lazy(async () => ({ default: (await import("./LiveExample.tsx")).LiveExample }));

/** The worksheet functions by what people ask: each on this workbook, what it takes, an example. */
export function FunctionsSection(): ReactNode {
  const styles = useStyles();
  const [wanted, setWanted] = useState("");
  const { ask } = useSession();
  const found = useMemo(() => functionsFor(wanted), [wanted]);
  const isAsked = wanted.trim() !== "";
  return (
    <SectionFrame title="Functions">
      <p className={styles.text}>
        Type these into any cell, as you would SUM. Lengths come out in the unit of their column.
      </p>
      <StartSwitch />
      <Button
        className={styles.aside}
        onClick={() => {
          ask("explain");
        }}
      >
        Explain the selected cell
      </Button>
      <Field
        label="What do you want to know?"
        hint={
          isAsked
            ? `${count(found.length, "function")} found.${found.length === 0 ? " Try one word of it." : ""}`
            : "In your words, such as: will it fit? same body. Or by the name of a function."
        }
      >
        <SearchBox
          value={wanted}
          onChange={(_, data) => {
            setWanted(data.value);
          }}
        />
      </Field>
      {isAsked ? (
        <Part title="Functions found">
          <FunctionList label="Functions found" found={found} />
        </Part>
      ) : (
        questions.map(({ question, names }) => (
          <Part key={question} title={question}>
            <FunctionList
              label={question}
              found={names.flatMap((name) => found.filter((each) => each.name === name))}
            />
          </Part>
        ))
      )}
    </SectionFrame>
  );
}

function FunctionList(props: {
  readonly label: string;
  readonly found: readonly FunctionDescriptor[];
}): ReactNode {
  const styles = useStyles();
  return (
    <ul className={styles.list} aria-label={props.label}>
      {props.found.map((descriptor) => (
        <li key={descriptor.name}>
          <FunctionHelp descriptor={descriptor} />
        </li>
      ))}
    </ul>
  );
}

function FunctionHelp({ descriptor }: { readonly descriptor: FunctionDescriptor }): ReactNode {
  const styles = useStyles();
  const { name, summary, details, parameters, examples, source } = descriptor;
  const [example] = examples;
  const [isOpen, setOpen] = useState(false);
  return (
    <Disclosure title={name} says={summary} onToggle={setOpen}>
      {isOpen && (
        <Suspense fallback={<p className={styles.text}>Looking at your tables …</p>}>
          <LiveExample descriptor={descriptor} />
        </Suspense>
      )}
      <h3 className={styles.heading}>How it is written</h3>
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
