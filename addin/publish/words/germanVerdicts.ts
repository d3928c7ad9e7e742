import type { Verdict } from "../../fit/verdict.ts";
import { germanTerms } from "../../measures/germanTerms.ts";
import type { ChangeToMake, LengthName, OpeningName, Reason, VerdictWords } from "./words.ts";

/** What has to pass an opening, behind “für”. */
const passing: Readonly<Record<string, string>> = {
  neckGirth: "den Hals",
  headGirth: "den Kopf",
  wristGirth: "das Handgelenk",
  handGirth: "die Hand",
  ankleGirth: "die Fessel",
  heelGirth: "die Ferse",
  footGirth: "den Fuß",
  hipGirth: "die Hüfte",
  shoulderGirth: "die Schultern",
  bustGirth: "die Brust",
  forearmGirth: "den Unterarm",
  elbowGirth: "den Ellbogen",
  upperArmGirth: "den Oberarm",
  calfGirth: "die Wade",
  kneeGirth: "das Knie",
  midThighGirth: "die Mitte des Oberschenkels",
  thighGirth: "den Oberschenkel",
};
const openings: Readonly<Record<OpeningName, string>> = {
  neck: "Halsöffnung",
  waist: "Taillenöffnung",
  narrowest: "engste Stelle",
  sleeve: "Ärmelöffnung",
  wrist: "Öffnung am Handgelenk",
  hem: "Saum",
  leg: "Beinöffnung",
  ankle: "Öffnung an der Fessel",
};
const lengths = { hem: "Länge", sleeve: "Ärmellänge", leg: "Beinlänge" } as const;
const lengthsToChange: Readonly<Record<LengthName, (by: string, verb: string) => string>> = {
  hem: (by, verb) => `am Saum ${by} ${verb}`,
  sleeve: (by, verb) => `die Ärmel ${by} ${verb}`,
  leg: (by, verb) => `die Beine ${by} ${verb}`,
};
const verdicts = {
  fits: "passt",
  snug: "sitzt knapp",
  loose: "sitzt locker",
  "too close to call": "nicht sicher zu sagen",
  "not known": "nicht bekannt",
  "too long": "zu lang",
  "too short": "zu kurz",
  "too loose": "zu weit",
  "too tight": "zu eng",
  "will not go on": "lässt sich nicht anziehen",
} as const;

/** What heights are instead of short and long. */
const heights: Readonly<Partial<Record<Verdict, string>>> = {
  ...{ "too short": "zu niedrig", "too long": "zu hoch" },
};

function list(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? "";
  return `${names.slice(0, -1).join(", ")} und ${names.at(-1) ?? ""}`;
}

function reason(given: Reason): string {
  switch (given.kind) {
    case "measure": {
      const { measure, of, verdict, by } = given;
      if (verdict === "too close to call")
        return `${measure}: nicht sicher zu sagen, bitte noch einmal messen`;
      if (verdict === "not known") return `${measure}: nicht bekannt`;
      const amount = by === undefined ? "" : `${by} `;
      if (verdict === "will not go on")
        return `${measure}: ${amount}zu ${of === "length" ? "kurz" : "klein"}, ${verdicts[verdict]}`;
      return `${measure}: ${amount}${(of === "height" ? heights[verdict] : undefined) ?? verdicts[verdict]}`;
    }
    case "opening": {
      const { place, passes, verdict, by } = given;
      const what = passing[passes] ?? "den Körper";
      if (verdict === "too close to call")
        return `${openings[place]} für ${what}: nicht sicher zu sagen, bitte noch einmal messen`;
      if (verdict === "not known") return `${openings[place]} für ${what}: nicht bekannt`;
      return `${openings[place]} ${by === undefined ? "" : `${by} `}zu eng für ${what}`;
    }
    case "garment unknown":
      return `${given.measure}: es ist nicht gesagt, was das Kleidungsstück dort misst`;
    case "opening unknown":
      return `${openings[given.place]}: dazu ist nicht genug gesagt`;
    case "body unknown":
      return `es fehlt: ${list(given.measures)}`;
    case "nothing to judge by":
      return "es gibt keine Regel, nach der man urteilen könnte";
  }
}

function change(given: ChangeToMake): string {
  switch (given.kind) {
    case "girth": {
      const { measure, isMore, amounts } = given;
      const how = isMore ? "weiter" : "enger";
      if (!amounts) return `${measure}: etwas ${how} machen`;
      const { total, edges, perEdge } = amounts;
      return `${measure}: ${total} ${how} machen, an jeder von ${String(edges)} Nahtkanten ${perEdge}`;
    }
    case "length": {
      const { at, isMore, total, measure } = given;
      const verb = isMore ? "verlängern" : "kürzen";
      const by = total === undefined ? "etwas" : `um ${total}`;
      return at === undefined ? `${measure}: ${by} ${verb}` : lengthsToChange[at](by, verb);
    }
    case "width":
      return `${given.measure}: ${given.total ?? "etwas"} ${given.isMore ? "breiter" : "schmaler"} machen`;
    case "height":
      return `${given.measure}: ${given.total ?? "etwas"} ${given.isMore ? "höher" : "niedriger"} machen`;
    case "opening":
      return `${openings[given.place]} ${given.total === undefined ? "etwas" : `um ${given.total}`} erweitern`;
  }
}

export const germanVerdicts: VerdictWords = {
  language: "German",
  decimalMark: ",",
  inch: "Zoll",
  measure: (id) => germanTerms[id]?.[0],
  verdicts,
  lengths,
  littleShort: "etwas kurz",
  littleLong: "etwas lang",
  reason,
  change,
  list,
  listing: {
    draftedFor: (figure) => `Konstruiert für ${figure}.`,
    fits: (names, isFirst) => `${isFirst ? "Passt" : "Passt auch"}: ${names}.`,
    change: (names) => `Passt mit einer Änderung: ${names}.`,
    unsure: (names) => `Erst messen: ${names}.`,
    not: (names) => `Passt nicht: ${names}.`,
    nothing: "Noch lässt sich für keine Figur der Tabelle etwas sagen.",
    measureYours: "Bitte die eigene Figur nachmessen: Ausgaben unterscheiden sich.",
    headings: ["Schnitt", "Figur", "Urteil", "Warum, oder was zu ändern ist"],
  },
};
