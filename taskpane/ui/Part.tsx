import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";

const useStyles = makeStyles({
  part: { display: "flex", flexDirection: "column", gap: "8px" },
  heading: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: 600 },
  plain: { margin: 0, paddingLeft: "20px" },
});

/** A part of an answer under its own heading. */
export function Part(props: { readonly title: string; readonly children: ReactNode }): ReactNode {
  const styles = useStyles();
  return (
    <section className={styles.part}>
      <h2 className={styles.heading}>{props.title}</h2>
      {props.children}
    </section>
  );
}

/** What has to be measured before anybody can say more; nothing where nothing has. */
export function MeasureFirst({ take }: { readonly take: readonly string[] }): ReactNode {
  const styles = useStyles();
  if (take.length === 0) return null;
  return (
    <Part title="Measure first">
      <ul className={styles.plain}>
        {take.map((what) => (
          <li key={what}>{what}</li>
        ))}
      </ul>
    </Part>
  );
}
