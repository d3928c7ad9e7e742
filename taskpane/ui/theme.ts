import type { BrandVariants, Theme } from "@fluentui/react-components";
import { createDarkTheme, createLightTheme } from "@fluentui/react-components";

/** `forced`: the colours that the user has set for everything on the screen. */
export type Appearance = "light" | "dark" | "forced";

/** Colours of what is printed: those of the light theme. */
export const paperColours = { ink: "#26292E", quiet: "#5C6068", chalk: "#1F5FA8" } as const;

/** Chalk-blue from dark to light; 80 is the chalk of the light theme. */
const chalk: BrandVariants = {
  10: "#03101D",
  20: "#0A1E33",
  30: "#0F2C4C",
  40: "#133864",
  50: "#17447A",
  60: "#1A4E8C",
  70: "#1D579A",
  80: paperColours.chalk,
  90: "#3A73B6",
  100: "#5286C3",
  110: "#699ACF",
  120: "#82AEDB",
  130: "#9CC1E6",
  140: "#B6D3EF",
  150: "#D1E4F6",
  160: "#EBF4FC",
};

/** Colours with a meaning of their own, beside Fluent’s: always together with a word and a shape. */
interface Meanings {
  /** Stops a garment. */
  readonly thread: string;
  readonly threadGround: string;
  /** Look here. */
  readonly brass: string;
  readonly brassGround: string;
  /** In order. */
  readonly leaf: string;
  readonly leafGround: string;
  /** What can be acted on. */
  readonly chalk: string;
  readonly chalkGround: string;
}

/** The name under which Fluent publishes each meaning as a style variable. */
export const meaning = {
  thread: "var(--thread)",
  threadGround: "var(--threadGround)",
  brass: "var(--brass)",
  brassGround: "var(--brassGround)",
  leaf: "var(--leaf)",
  leafGround: "var(--leafGround)",
  chalk: "var(--chalk)",
  chalkGround: "var(--chalkGround)",
} as const satisfies Record<keyof Meanings, string>;

/** The letters of the pane. */
export const face = 'system-ui, "Segoe UI", -apple-system, Roboto, "Helvetica Neue", Arial, sans-serif';

/** The size of letters that browsers begin with, in CSS pixels. */
const usualLetters = 16;

/**
 * Sizes of letters and lines as shares of the size that the reader has set in the browser, so that larger letters there are larger
 * letters here (WCAG 2.2, 1.4.4 Resize Text).
 */
function scalable<T extends Theme>(theme: T): T {
  const sizes = Object.entries(theme).flatMap(([name, value]) => {
    const px = /^(fontSize|lineHeight)/u.test(name) ? /^([\d.]+)px$/u.exec(String(value))?.[1] : undefined;
    return px === undefined ? [] : [[name, `${String(Number(px) / usualLetters)}rem`] as const];
  });
  return { ...theme, ...Object.fromEntries(sizes) };
}

/** Hints are read too: Fluent’s 12 pixels are too small for that. */
const letters = {
  fontFamilyBase: face,
  fontFamilyNumeric: face,
  fontSizeBase200: "13px",
  lineHeightBase200: "18px",
};

const light: Theme & Meanings = {
  ...createLightTheme(chalk),
  ...letters,
  colorNeutralBackground1: "#FFFFFF",
  colorNeutralBackground2: "#FBF9F4",
  colorNeutralBackground3: "#F4F0E6",
  colorNeutralForeground1: paperColours.ink,
  colorNeutralForeground2: "#3B3F46",
  colorNeutralForeground3: paperColours.quiet,
  colorNeutralForeground4: paperColours.quiet,
  colorNeutralStroke1: "#D9D3C5",
  colorNeutralStroke2: "#D9D3C5",
  colorNeutralStroke3: "#E8E3D7",
  colorNeutralStrokeAccessible: paperColours.quiet,
  thread: "#B3261E",
  threadGround: "#FBEDEB",
  brass: "#8A6100",
  brassGround: "#FBF3DF",
  leaf: "#2C6E49",
  leafGround: "#EAF4EE",
  chalk: paperColours.chalk,
  chalkGround: "#EBF4FC",
};

const dark: Theme & Meanings = {
  ...createDarkTheme(chalk),
  ...letters,
  colorNeutralBackground1: "#2A2C30",
  colorNeutralBackground2: "#1F2124",
  colorNeutralBackground3: "#34373C",
  colorNeutralForeground1: "#F4F1EA",
  colorNeutralForeground2: "#DEDAD1",
  colorNeutralForeground3: "#B9B6AE",
  colorNeutralForeground4: "#B9B6AE",
  colorNeutralStroke1: "#54575D",
  colorNeutralStroke2: "#474A50",
  colorNeutralStroke3: "#3C3F44",
  colorBrandForeground1: chalk[120],
  colorBrandForeground2: chalk[130],
  colorBrandForegroundLink: chalk[120],
  colorBrandForegroundLinkHover: chalk[130],
  colorBrandForegroundLinkPressed: chalk[110],
  colorBrandForegroundLinkSelected: chalk[120],
  colorCompoundBrandForeground1: chalk[120],
  thread: "#FF9C94",
  threadGround: "#43231F",
  brass: "#E9BE5C",
  brassGround: "#3A2F15",
  leaf: "#86CFA4",
  leafGround: "#1E3527",
  chalk: "#82AEDB",
  chalkGround: "#16283C",
};

/**
 * Under forced colours the browser puts the user’s in the place of ours, but not in drawings: they name the user’s
 * colours themselves, so that every line stands out from the ground. Dashes, shapes, numbers and words keep the meaning.
 * Source of the names: CSS Color Module Level 4, system colours.
 */
const forced: Theme & Meanings = {
  ...light,
  colorNeutralBackground1: "Canvas",
  colorNeutralBackground2: "Canvas",
  colorNeutralBackground3: "Canvas",
  colorNeutralForeground1: "CanvasText",
  colorNeutralForeground2: "CanvasText",
  colorNeutralForeground3: "CanvasText",
  colorNeutralForeground4: "CanvasText",
  colorNeutralStroke1: "CanvasText",
  colorNeutralStroke2: "CanvasText",
  colorNeutralStroke3: "CanvasText",
  colorNeutralStrokeAccessible: "CanvasText",
  colorNeutralForegroundDisabled: "GrayText",
  thread: "CanvasText",
  threadGround: "Canvas",
  brass: "CanvasText",
  brassGround: "Canvas",
  leaf: "CanvasText",
  leafGround: "Canvas",
  chalk: "LinkText",
  chalkGround: "Canvas",
};

const themes: Readonly<Record<Appearance, Theme>> = {
  light: scalable(light),
  dark: scalable(dark),
  forced: scalable(forced),
};

/** The dressmaker’s table as a Fluent theme. */
export function paneTheme(appearance: Appearance): Theme {
  return themes[appearance];
}
