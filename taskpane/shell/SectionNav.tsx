import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { SectionKey } from "./sections.ts";
import { sectionKeys, sectionTitles } from "./sections.ts";
import { meaning } from "../ui/theme.ts";

const useStyles = makeStyles({
  nav: {
    flexShrink: 0,
    backgroundColor: tokens.colorNeutralBackground1,
    borderBottom: `1px solid ${tokens.colorNeutralStroke1}`,
  },
  list: { listStyleType: "none", margin: 0, padding: "0 11px", display: "flex", flexWrap: "wrap" },
  link: {
    minHeight: "36px",
    padding: "3px 5px",
    font: "inherit",
    color: tokens.colorNeutralForeground2,
    backgroundColor: "transparent",
    border: "none",
    cursor: "pointer",
    "&:hover": { color: meaning.chalk },
    "&:focus-visible": { outline: `2px solid ${meaning.chalk}`, outlineOffset: "-2px" },
  },
  current: {
    // Bold without being wider, so that no name moves when another is chosen.
    textShadow: "0.4px 0 0 currentColor, -0.4px 0 0 currentColor",
    color: tokens.colorNeutralForeground1,
    paddingBottom: 0,
    borderBottom: `3px solid ${meaning.chalk}`,
  },
});

/** The sections by name. With more of them the list goes on in a second line; nothing is hidden behind a menu. */
export function SectionNav(props: {
  readonly section: SectionKey;
  readonly onChoose: (section: SectionKey) => void;
}): ReactNode {
  const styles = useStyles();
  return (
    <nav className={styles.nav} aria-label="Sections">
      <ul className={styles.list}>
        {sectionKeys.map((key) => (
          <li key={key}>
            <button
              type="button"
              className={mergeClasses(styles.link, key === props.section && styles.current)}
              aria-current={key === props.section ? "page" : undefined}
              onClick={() => {
                props.onChoose(key);
              }}
            >
              {sectionTitles[key]}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
