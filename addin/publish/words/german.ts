import type { OpeningPlace } from "../../chart/garmentClass.ts";
import type { BodyPart, ChangeToMake, Reason, Words } from "./words.ts";

/**
 * German terms of measures.
 *
 * Those marked EN are the terms of DIN EN 13402-1:2001 (Größenbezeichnung von Bekleidung, Teil 1), as public pages about
 * that standard list them; the standard itself was not at hand. All others are common words of German cutting and dressmaking,
 * from memory; where ISO 8559-1 has a term, the word is meant to say the same.
 */
const measures: Readonly<Record<string, readonly [term: string, howToTake: string]>> = {
  // EN: Körpergröße (Körperhöhe); ISO 8559-1 “stature”.
  height: ["Körpergröße", "Von der Sohle bis zum Scheitel, ohne Schuhe und Perücke."],
  shoulderGirth: [
    "Schulterumfang",
    "Rund um beide Schultern und die anliegenden Arme an der breitesten Stelle.",
  ],
  shoulderWidth: [
    "Rückenbreite von Schulter zu Schulter",
    "Über den Rücken von einem Schulterpunkt zum anderen.",
  ],
  shoulderLength: ["Schulterlänge", "Vom seitlichen Halsansatz bis zum Schulterpunkt."],
  // EN: Halsumfang; ISO 8559-1 “neck girth”.
  neckGirth: ["Halsumfang", "Rund um den Hals, das Band waagerecht."],
  neckBaseGirth: ["Halsansatzumfang", "Rund um den unteren Rand des Halses."],
  acrossFront: ["Vordere Brustbreite", "Vorn von einer Armbeuge zur anderen."],
  acrossBack: ["Rückenbreite", "Hinten von einer Armbeuge zur anderen."],
  upperBustGirth: [
    "Oberbrustumfang",
    "Rund um den Körper dicht unter den Armen, über der stärksten Stelle der Brust.",
  ],
  // EN: Brustumfang; ISO 8559-1 “bust girth”.
  bustGirth: ["Brustumfang", "Waagerecht über die stärkste Stelle der Brust, unter den Armen durch."],
  // EN: Unterbrustumfang; ISO 8559-1 “under-bust girth”.
  underBustGirth: ["Unterbrustumfang", "Waagerecht dicht unter der Brust."],
  // EN: Taillenumfang; ISO 8559-1 “waist girth”.
  waistGirth: ["Taillenumfang", "Waagerecht um die schmalste Stelle zwischen Rippen und Hüfte."],
  highHipGirth: ["Oberer Hüftumfang", "Rund um den Körper halb zwischen Taille und Hüfte."],
  // EN: Hüftumfang; ISO 8559-1 “hip girth”.
  hipGirth: ["Hüftumfang", "Waagerecht über die stärkste Stelle des Gesäßes, die Füße beieinander."],
  backWaistLength: ["Rückenlänge", "Vom Halswirbel die Rückenmitte hinab bis zur Taille."],
  frontWaistLength: ["Vordere Taillenlänge", "Vom seitlichen Halsansatz über die Brust bis zur Taille."],
  centreFrontLength: ["Vordere Mittellänge", "Von der Halsgrube die Mitte hinab bis zur Taille."],
  bustPointWidth: ["Brustpunktabstand", "Gerade von einem Brustpunkt zum anderen."],
  bustPointDepth: ["Brusttiefe", "Vom seitlichen Halsansatz hinab zum Brustpunkt."],
  sideWaistLength: ["Seitenlänge", "Von der Achsel die Seite hinab bis zur Taille."],
  waistToHip: ["Hüfttiefe", "Seitlich von der Taille hinab bis zur Höhe des Hüftumfangs."],
  torsoLength: ["Rumpflänge", "Vom Halswirbel gerade hinab bis auf die Höhe des Schritts."],
  torsoGirth: [
    "Rumpfumfang",
    "Von der Schultermitte über die Brust, durch den Schritt und den Rücken hinauf.",
  ],
  bodyRise: ["Sitzhöhe", "Im Sitzen von der Taille seitlich hinab bis zur Sitzfläche."],
  crotchLength: [
    "Schrittlänge von Taille zu Taille",
    "Von der Taille vorn durch den Schritt bis zur Taille hinten.",
  ],
  // EN: Armlänge; ISO 8559-1 “arm length”.
  armLength: ["Armlänge", "Vom Schulterpunkt über den Ellbogen bis zum Handgelenk."],
  upperArmLength: ["Oberarmlänge", "Vom Schulterpunkt bis zum Ellbogen."],
  underarmLength: ["Innere Armlänge", "Von der Achsel bis zum Handgelenk."],
  armscyeGirth: ["Armlochumfang", "Rund um den Armansatz, durch die Achsel."],
  upperArmGirth: ["Oberarmumfang", "Rund um die stärkste Stelle des Oberarms."],
  elbowGirth: ["Ellbogenumfang", "Rund um den Ellbogen."],
  forearmGirth: ["Unterarmumfang", "Rund um die stärkste Stelle des Unterarms."],
  wristGirth: ["Handgelenkumfang", "Rund um das Handgelenk."],
  // EN: Handumfang; ISO 8559-1 “hand girth”.
  handGirth: ["Handumfang", "Rund um die stärkste Stelle der Hand, über die Knöchel."],
  handLength: ["Handlänge", "Vom Handgelenk bis zur Spitze des Mittelfingers."],
  outsideLeg: ["Äußere Beinlänge", "Seitlich von der Taille bis zur Sohle."],
  // EN: innere Beinlänge; ISO 8559-1 “inside leg length”.
  insideLeg: ["Innere Beinlänge", "Vom Schritt innen hinab bis zur Sohle."],
  waistToKnee: ["Länge von Taille bis Knie", "Von der Taille hinab bis zur Mitte des Knies."],
  kneeHeight: ["Kniehöhe", "Von der Sohle bis zur Mitte des Knies."],
  thighGirth: ["Oberschenkelumfang", "Rund um die stärkste Stelle des Oberschenkels."],
  midThighGirth: ["Umfang in der Mitte des Oberschenkels", "Rund um die Mitte des Oberschenkels."],
  kneeGirth: ["Knieumfang", "Rund um das Knie."],
  calfGirth: ["Wadenumfang", "Rund um die stärkste Stelle der Wade."],
  ankleGirth: ["Fesselumfang", "Rund um die schmalste Stelle über dem Knöchel."],
  heelGirth: ["Fersenumfang", "Rund um Ferse und Spann."],
  footGirth: ["Ballenumfang", "Rund um den Ballen des Fußes."],
  instepGirth: ["Spannumfang", "Rund um die Mitte des Fußes, über den Spann."],
  // EN: Fußlänge; ISO 8559-1 “foot length”.
  footLength: ["Fußlänge", "Von der Ferse bis zur längsten Zehe."],
  footWidth: ["Fußbreite", "Quer über die breiteste Stelle des Fußes."],
  heelHeight: ["Absatzhöhe", "Wie hoch die Ferse über dem Ballen steht; 0 für einen flachen Fuß."],
  // EN: Kopfumfang; ISO 8559-1 “head girth”.
  headGirth: ["Kopfumfang", "Waagerecht um die stärkste Stelle des Kopfes, ohne Perücke."],
  headHeight: ["Kopfhöhe", "Vom Scheitel gerade hinab bis unter das Kinn."],
  faceWidth: ["Gesichtsbreite", "Quer über die breiteste Stelle des Gesichts."],
};

/** The classes that come with the project; common words of the trade, from memory. */
const garmentClasses: Readonly<Record<string, string>> = {
  "Close-fitting bodice": "Eng anliegendes Oberteil",
  Corset: "Korsett",
  "Sheath dress": "Etuikleid",
  Dress: "Kleid",
  Pinafore: "Trägerkleid",
  "Straight dress": "Gerades Kleid",
  "Loose dress": "Weites Kleid",
  "Tent dress": "Zeltkleid",
  "Wrapped robe": "Wickelrobe",
  "Loose top": "Weites Oberteil",
  Cape: "Umhang",
  Jacket: "Jacke",
  Coat: "Mantel",
  "Fitted skirt": "Enger Rock",
  "Flared skirt": "Weiter Rock",
  Trousers: "Hose",
  Shorts: "Kurze Hose",
  Leggings: "Leggins",
  Briefs: "Unterhose",
  Tights: "Strumpfhose",
  Sleeve: "Ärmel",
  Hosiery: "Strümpfe",
  Socks: "Socken",
  "Ankle socks": "Söckchen",
  Shoe: "Schuh",
  Slipper: "Hausschuh",
  Glove: "Handschuh",
  Headwear: "Kopfbedeckung",
  Hood: "Kapuze",
};

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
const openings: Readonly<Record<OpeningPlace, string>> = {
  neck: "Halsöffnung",
  cuff: "Ärmelöffnung",
  hem: "Beinöffnung",
  waist: "Taillenöffnung",
};
const parts: Readonly<Record<BodyPart, string>> = { head: "Köpfe", hands: "Hände", feet: "Füße" };

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

function list(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? "";
  return `${names.slice(0, -1).join(", ")} und ${names.at(-1) ?? ""}`;
}

function reason(given: Reason): string {
  switch (given.kind) {
    case "measure": {
      const { measure, verdict, by } = given;
      if (verdict === "too close to call")
        return `${measure}: nicht sicher zu sagen, bitte noch einmal messen`;
      if (verdict === "not known") return `${measure}: nicht bekannt`;
      return `${measure}: ${by === undefined ? "" : `${by} `}${verdicts[verdict]}`;
    }
    case "opening": {
      const { place, passes, verdict, by } = given;
      const what = passing[passes] ?? "den Körper";
      if (verdict === "too close to call")
        return `${openings[place]} für ${what}: nicht sicher zu sagen, bitte noch einmal messen`;
      if (verdict === "not known") return `${openings[place]} für ${what}: nicht bekannt`;
      return `${openings[place]} ${by === undefined ? "" : `${by} `}zu klein für ${what}`;
    }
    case "garment unknown":
      return `${given.measure}: es ist nicht gesagt, was das Kleidungsstück dort misst`;
    case "opening unknown":
      return `${openings[given.place]}: über sie ist nicht genug gesagt`;
    case "body unknown":
      return `nicht bekannt: ${list(given.measures)}`;
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
    case "length":
      return `${given.measure}: ${given.total === undefined ? "etwas" : `um ${given.total}`} ${given.isMore ? "verlängern" : "kürzen"}`;
    case "opening":
      return `${openings[given.place]} ${given.total === undefined ? "etwas" : `um ${given.total}`} vergrößern`;
  }
}

const comparatives = {
  girth: ["größer", "kleiner"],
  length: ["länger", "kürzer"],
  width: ["breiter", "schmaler"],
  height: ["höher", "niedriger"],
} as const;

export const german: Words = {
  language: "German",
  tag: "de",
  decimalMark: ",",
  inch: "Zoll",
  inchHeading: "Zoll",
  measure: (id) => measures[id]?.[0],
  howToTake: (id) => measures[id]?.[1],
  garmentClass: (name) => garmentClasses[name] ?? name,
  verdicts,
  kinds: {
    fits: "Passt",
    change: "Passt mit einer Änderung",
    unsure: "Erst messen",
    not: "Passt nicht",
  },
  reason,
  change,
  list,
  sameBody: (names, differ, alike) => {
    const tail = [
      differ.length > 0 ? `; verschieden sind ihre ${list(differ.map((part) => parts[part]))}` : "",
      alike.length > 0 ? `; gleich sind auch ihre ${list(alike.map((part) => parts[part]))}` : "",
    ];
    return `Diese haben denselben Körper: ${names}${tail.join("")}.`;
  },
  differs: (measure, kind, isMore, by) => `${measure} ${by} ${comparatives[kind][isMore ? 0 : 1]}`,
  notMeasured: "nicht gemessen",
  inQuestion: "wird noch geprüft, daher nicht angegeben",
  estimatedHere: "nur geschätzt, daher nicht angegeben",
  markedDoubtful: "wird noch geprüft",
  markedEstimated: "geschätzt",
  rounded: (units) => `Alle Maße sind ungefähr: gerundet auf ${list(units)}.`,
  cautions: [
    "Bitte messen Sie Ihre eigene Figur nach: Ausgaben und Güsse unterscheiden sich.",
    "Für eine Figur, mit der ein Kind spielt, lassen Sie Kleinteile, die abgehen können, Schnüre und lange Bänder weg, vor allem am Hals.",
    "Die Regeln für Spielzeug sind von Ort zu Ort verschieden. Hier geht es um die Passform, nicht um die Sicherheit.",
  ],
  page: {
    chart: "Die Maßtabelle",
    figure: "Figur",
    bodies: "Wer denselben Körper hat",
    patterns: "Welcher Schnitt wem passt",
    contents: "Auf dieser Seite",
    cautions: "Bitte beachten",
    find: "Eine Figur suchen",
    findHint: "Teil eines Namens",
    sortHint: "Ein Klick auf eine Überschrift sortiert nach ihr.",
    sortedUp: "sortiert, Kleinstes zuerst",
    sortedDown: "sortiert, Größtes zuerst",
    shown: (shown, of) => `${String(shown)} von ${String(of)} Zeilen`,
    noneFound: "In dieser Tabelle steht keine Figur mit diesem Namen.",
    draftedFor: "Gezeichnet für",
    noPatterns: "In dieser Tabelle sind keine Schnitte genannt.",
    notJudged: (pattern) => `${pattern} lässt sich noch nicht beurteilen.`,
    madeWith: "Mit Measure Book aus den eigenen Messungen der Herstellerin erstellt.",
    allMeasures: "Wie jedes Maß genommen wird",
  },
  buyer: {
    title: "Passt es meiner?",
    intro:
      "Wählen Sie Ihre Figur, oder tippen Sie ein, was Sie gemessen haben. Nichts davon verlässt diese Seite: Sie hat keinen Weg, es zu senden.",
    choose: "Ihre Figur",
    chooseNone: "Sie steht nicht in der Liste",
    orType: "Was Sie gemessen haben",
    unit: "Eine Zahl ohne Einheit ist in",
    units: { in: "Zoll", mm: "Millimetern", cm: "Zentimetern" },
    moreMeasures: "Weitere Maße",
    aboutFigure: "Wie Ihre Figur ist",
    notSaid: "nicht gesagt",
    yes: "ja",
    no: "nein",
    traits: {
      handsOff: "Lassen sich die Hände abnehmen?",
      headOff: "Lässt sich der Kopf abnehmen?",
      feetOff: "Lassen sich die Füße abnehmen?",
      softBody: "Ist der Körper weich?",
      jointed: "Haben die Arme Gelenke?",
      heeledFoot: "Sind die Füße für Absätze geformt?",
    },
    clear: "Von vorn beginnen",
    nothingYet: "Tippen Sie mindestens ein Maß ein, etwa 13,6 cm oder 5 3/8 in, oder wählen Sie eine Figur.",
    like: "Figuren wie Ihre",
    noneLike:
      "In dem, was Sie eingetippt haben, ist keine Figur der Tabelle gleich, so genau ein Maßband misst.",
    alike: (figure) => `${figure}: gleich innerhalb der Toleranz in allem, was Sie eingetippt haben`,
    nearest: (figure, differs) => `${figure} kommt nahe. Ihre ist anders: ${differs}.`,
    takeNext: "Um sicher zu sein, messen Sie als Nächstes",
    takeFor: (measure, patterns) =>
      `${measure}, für ${String(patterns)} ${patterns === 1 ? "Schnitt" : "Schnitte"}`,
    refused: (text) => `Nicht gelesen: ${text}`,
    counted: (kind, patterns) => {
      const one = patterns === 1;
      const what = {
        fits: one ? "passt" : "passen",
        change: one ? "passt mit einer Änderung" : "passen mit einer Änderung",
        unsure: "erst zu messen",
        not: one ? "passt nicht" : "passen nicht",
      };
      return `${String(patterns)} ${what[kind]}`;
    },
    needsScript:
      "Sind Skripte erlaubt, antwortet diese Seite auch für eine Figur, die nicht in der Tabelle steht.",
  },
  listing: {
    draftedFor: (figure) => `Gezeichnet für ${figure}.`,
    fits: (names, isFirst) => `${isFirst ? "Passt" : "Passt auch"}: ${names}.`,
    change: (names) => `Passt mit einer Änderung: ${names}.`,
    unsure: (names) => `Erst messen: ${names}.`,
    not: (names) => `Passt nicht: ${names}.`,
    nothing: "Noch lässt sich für keine Figur der Tabelle etwas sagen.",
    measureYours: "Bitte die eigene Figur nachmessen: Ausgaben unterscheiden sich.",
    headings: ["Schnitt", "Figur", "Urteil", "Warum, oder was zu ändern ist"],
  },
};
