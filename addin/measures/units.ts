import { InputError } from "./inputError.ts";
import { quote } from "./quote.ts";

export const lengthUnits = ["mm", "cm", "in"] as const;

/** Units a chart column may be in. Inside the engine every length is in millimetres. */
export type LengthUnit = (typeof lengthUnits)[number];

/** Millimetres in one unit. The inch is exactly 25.4 mm (international yard and pound agreement, 1959). */
export const mmPerUnit: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: 25.4 };

const spellings: Readonly<Record<string, LengthUnit>> = {
  mm: "mm",
  mms: "mm",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  cm: "cm",
  cms: "cm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  zentimeter: "cm",
  in: "in",
  ins: "in",
  inch: "in",
  inches: "in",
  zoll: "in",
  '"': "in",
  "″": "in",
  "”": "in",
};

/** A length in `unit` → millimetres. */
export function toMm(length: number, unit: LengthUnit): number {
  return length * mmPerUnit[unit];
}

/** A length in millimetres → `unit`. */
export function fromMm(mm: number, unit: LengthUnit): number {
  return mm / mmPerUnit[unit];
}

/** The unit that a word, abbreviation or inch mark stands for (any case, with or without a full stop). */
export function findUnit(text: string): LengthUnit | undefined {
  const key = text.trim().toLowerCase().replace(/\.$/, "");
  return Object.hasOwn(spellings, key) ? spellings[key] : undefined;
}

/**
 * The unit that a text stands for.
 *
 * @throws {InputError} when the text is not mm, cm or inches
 */
export function readUnit(text: string): LengthUnit {
  const unit = findUnit(text);
  if (!unit) throw new InputError(`${quote(text)} is not a unit of length. Use mm, cm or in.`);
  return unit;
}

/** How inch tapes and rules are divided (common practice): halving, from halves to sixty-fourths. */
export const inchDivisions: readonly number[] = [2, 4, 8, 16, 32, 64];
