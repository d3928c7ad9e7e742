import { tokens } from "@fluentui/react-components";

/** A list without bullets, one entry below the other. */
export const plainList = {
  listStyleType: "none",
  margin: 0,
  padding: 0,
  display: "flex",
  flexDirection: "column",
  gap: "8px",
} as const;

/** What belongs together, on a ground of its own. */
export const card = {
  padding: "8px 12px",
  borderRadius: tokens.borderRadiusMedium,
  border: `1px solid ${tokens.colorNeutralStroke1}`,
  backgroundColor: tokens.colorNeutralBackground1,
  display: "flex",
  flexDirection: "column",
  gap: "4px",
} as const;
