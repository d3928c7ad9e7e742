import { headingKey } from "../measures/headingKey.ts";
import type { Chart } from "./chart.ts";

/** What a figure is like, where that decides whether a garment goes on; undefined where the chart does not say. */
export interface FigureTraits {
  readonly handsOff: boolean | undefined;
  readonly headOff: boolean | undefined;
  readonly feetOff: boolean | undefined;
  readonly wig: boolean | undefined;
  /** True for a soft body (stuffed cloth), false for a hard one. */
  readonly softBody: boolean | undefined;
  readonly jointed: boolean | undefined;
  /** True for a foot shaped for a heeled shoe. */
  readonly heeledFoot: boolean | undefined;
}
type Trait = keyof FigureTraits;

const yes = ["yes", "y", "true", "1", "x", "removable", "come off", "comes off", "off", "magnetic", "magnet"];
const no = ["no", "n", "false", "0", "fixed", "moulded", "molded", "-", "none", "moulded on"];

interface TraitColumn {
  readonly trait: Trait;
  readonly headings: readonly string[];
  readonly yes: readonly string[];
  readonly no: readonly string[];
}

/** “not removable”, “no wig”, “without joints” */
const denials = ["not", "no", "non", "without"];

/** Headings and words, in the form of `headingKey`; whole values first, then single words of the value. */
const traitColumns: readonly TraitColumn[] = [
  {
    trait: "handsOff",
    headings: ["hand removable", "removable hand", "hand come off", "hand off", "hand"],
    yes,
    no,
  },
  {
    trait: "headOff",
    headings: ["head removable", "removable head", "head comes off", "head off", "head"],
    yes,
    no: [...no, "wigged", "wig"],
  },
  {
    trait: "feetOff",
    headings: ["foot removable", "removable foot", "foot come off", "foot off"],
    yes,
    no,
  },
  {
    trait: "wig",
    headings: ["wig", "wigged", "hair", "head"],
    yes: ["wig", "wigged", "yes", "y", "true", "1", "x"],
    no: ["moulded", "molded", "rooted", "painted", "no", "n", "false", "0"],
  },
  {
    trait: "softBody",
    headings: ["body", "body type", "body material", "material", "soft body", "rigid or soft", "rigid soft"],
    yes: ["soft", "cloth", "stuffed", "fabric", "felt", "plush", "yes", "y", "true", "1", "x"],
    no: [
      ...[
        "rigid",
        "hard",
        "resin",
        "vinyl",
        "porcelain",
        "wood",
        "wooden",
        "plastic",
        "composition",
        "bisque",
      ],
      ...["no", "n", "false", "0"],
    ],
  },
  {
    trait: "jointed",
    headings: ["jointed", "joint", "arm joint", "arm jointed", "elbow jointed", "articulated"],
    yes: [
      "jointed",
      "ball jointed",
      "ball",
      "strung",
      "wired",
      "bendable",
      "elbow",
      "yes",
      "y",
      "true",
      "1",
      "x",
    ],
    no: ["jointless", "unjointed", "no", "n", "none", "false", "0", "fixed", "straight"],
  },
  {
    trait: "heeledFoot",
    headings: ["foot", "foot shape", "foot type", "foot flat or heeled", "heeled foot"],
    yes: [
      "heeled",
      "arched",
      "high heeled",
      "high heel",
      "heel",
      "tiptoe",
      "pointed",
      "yes",
      "y",
      "true",
      "1",
    ],
    no: ["flat", "no", "n", "false", "0"],
  },
];

/** The traits of every figure, read from the text columns of its chart. Contradicting words count as not said. */
export function figureTraits(chart: Chart): readonly FigureTraits[] {
  const columns = chart.attributes.flatMap((attribute) => {
    const key = headingKey(attribute.heading);
    return traitColumns
      .filter(({ headings }) => headings.includes(key))
      .map((column) => ({ column, values: attribute.values }));
  });
  return chart.figures.map((_, figure) => {
    const traits: Record<Trait, boolean | undefined> = {
      handsOff: undefined,
      headOff: undefined,
      feetOff: undefined,
      wig: undefined,
      softBody: undefined,
      jointed: undefined,
      heeledFoot: undefined,
    };
    for (const { column, values } of columns) {
      traits[column.trait] ??= readTrait(values[figure] ?? "", column);
    }
    return traits;
  });
}

function readTrait(text: string, column: TraitColumn): boolean | undefined {
  const value = headingKey(text);
  if (value === "") return undefined;
  const words = [value, ...value.split(" ")];
  const isDenied = words.length > 2 && words.some((word) => denials.includes(word));
  const names = words.some((word) => column.yes.includes(word));
  const saysYes = names && !isDenied;
  const saysNo = isDenied ? names : words.some((word) => column.no.includes(word));
  return saysYes === saysNo ? undefined : saysYes;
}
