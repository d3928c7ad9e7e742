import { tokens } from "@fluentui/react-components";

const letters = { fontSize: "12px", fill: tokens.colorNeutralForeground1 } as const;

/** Letters and lines that all drawings share. */
export const drawn = {
  letters,
  boldLetters: { ...letters, fontWeight: 600 },
  quietLetters: { ...letters, fill: tokens.colorNeutralForeground3 },
  /** Lines of scales. */
  axis: { fill: "none", stroke: tokens.colorNeutralForeground3, strokeWidth: "1px" },
  /** Lines that only lead the eye. */
  leader: { fill: "none", stroke: tokens.colorNeutralStroke1, strokeWidth: "1px" },
  /** What is compared with: the base, dashed. */
  base: {
    fill: "none",
    stroke: tokens.colorNeutralForeground2,
    strokeWidth: "1.5px",
    strokeDasharray: "5 3",
  },
} as const;
