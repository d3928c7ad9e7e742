import type { Verdict } from "../../../addin/fit/verdict.ts";
import { parseReading } from "../../../addin/measures/parseReading.ts";
import type { LengthUnit } from "../../../addin/measures/units.ts";
import { lengthUnits } from "../../../addin/measures/units.ts";
import type { BuyersAnswer } from "../../../addin/publish/buyersAnswer.ts";
import { answerBuyer } from "../../../addin/publish/buyersAnswer.ts";
import type { AskedMeasure, BuyersFile, BuyersTrait } from "../../../addin/publish/buyersFile.ts";
import { buyersTraits } from "../../../addin/publish/buyersFile.ts";
import { kindSigns } from "../../../addin/publish/page/kindSigns.ts";
import type { Words, FitKind } from "../../../addin/publish/words/words.ts";
import { wordsOf } from "../../../addin/publish/words/wordsOf.ts";
import { make, part } from "./elements.ts";
import { fitKinds } from "../../../addin/publish/words/words.ts";

/** A pattern on the figure that is asked about. */
interface Told {
  readonly code: string;
  readonly title: string;
  readonly verdict: Verdict;
  readonly kind: FitKind;
  readonly says: string;
}

/** Asked at once; the others unfold. */
const askedAtOnce = 6;

/** The part of the page that answers a buyer: a figure of the chart, or a body that she types. */
export function answerPart(file: BuyersFile): void {
  const words = wordsOf(file.language);
  const { buyer } = words;
  const result = part("result", HTMLElement);
  const figure = make(
    "select",
    { id: "figure" },
    make("option", { value: "" }, buyer.chooseNone),
    ...file.figures.map((name, at) => make("option", { value: String(at) }, name)),
  );
  const unit = make(
    "select",
    { id: "unit" },
    ...lengthUnits.map((each) => make("option", { value: each }, buyer.units[each])),
  );
  unit.value = file.units.some((each) => each.startsWith("inches")) ? "in" : (file.units[0] ?? "mm");
  const fields = file.asked.map((asked) => measureField(asked, words));
  const traits = buyersTraits.map((trait) => traitField(trait, words));
  const clear = make("button", { type: "button" }, buyer.clear);

  const show = (): void => {
    const chosen = figure.value === "" ? undefined : Number(figure.value);
    const typed = chosen === undefined ? readTyped(fields, unitOf(unit.value), words) : undefined;
    result.replaceChildren(
      ...(chosen !== undefined
        ? toldParts(chosenAnswers(file, chosen), words)
        : typed && typed.size > 0
          ? typedParts(file, { mm: typed, traits: saidTraits(traits), unit: unitOf(unit.value) }, words)
          : [make("p", { class: "quiet" }, buyer.nothingYet)]),
    );
  };
  const choose = (): void => {
    typing.hidden = figure.value !== "";
    part("in-unit", HTMLElement).hidden = typing.hidden;
    show();
  };

  const typing = make(
    "div",
    {},
    make("p", {}, make("strong", {}, buyer.orType)),
    make("div", { class: "fields" }, ...fields.slice(0, askedAtOnce).map(({ element }) => element)),
    ...unfolding(
      buyer.moreMeasures,
      fields.slice(askedAtOnce).map(({ element }) => element),
    ),
    ...unfolding(
      buyer.aboutFigure,
      traits.map(({ element }) => element),
    ),
  );
  part("asked", HTMLElement).append(
    make(
      "div",
      { class: "fields" },
      make("div", {}, make("label", { for: "figure" }, buyer.choose), figure),
      make("div", { id: "in-unit" }, make("label", { for: "unit" }, buyer.unit), unit),
    ),
    typing,
    make("p", {}, clear),
  );
  figure.addEventListener("change", choose);
  unit.addEventListener("change", show);
  typing.addEventListener("input", show);
  clear.addEventListener("click", () => {
    figure.value = "";
    for (const { input } of fields) input.value = "";
    for (const { select } of traits) select.value = "";
    choose();
    figure.focus();
  });
  part("needs-script", HTMLElement).hidden = true;
  part("form", HTMLElement).hidden = false;
  show();
}

function unitOf(value: string): LengthUnit {
  return lengthUnits.find((unit) => unit === value) ?? "mm";
}

function unfolding(title: string, contents: readonly HTMLElement[]): readonly HTMLElement[] {
  if (contents.length === 0) return [];
  return [make("details", {}, make("summary", {}, title), make("div", { class: "fields" }, ...contents))];
}

interface Field {
  readonly id: string;
  readonly input: HTMLInputElement;
  readonly problem: HTMLElement;
  readonly element: HTMLElement;
}

function measureField({ id, term }: AskedMeasure, words: Words): Field {
  const key = `m-${id}`;
  const how = words.howToTake(id);
  const input = make("input", {
    id: key,
    name: id,
    autocomplete: "off",
    "aria-describedby": `${key}-problem`,
    ...(how !== undefined && how !== "" ? { title: how } : {}),
  });
  const problem = make("p", { id: `${key}-problem`, class: "problem" });
  problem.hidden = true;
  return { id, input, problem, element: make("div", {}, make("label", { for: key }, term), input, problem) };
}

interface TraitField {
  readonly trait: BuyersTrait;
  readonly select: HTMLSelectElement;
  readonly element: HTMLElement;
}

function traitField(trait: BuyersTrait, { buyer }: Words): TraitField {
  const select = make(
    "select",
    { id: `t-${trait}` },
    make("option", { value: "" }, buyer.notSaid),
    make("option", { value: "yes" }, buyer.yes),
    make("option", { value: "no" }, buyer.no),
  );
  const label = make("label", { for: `t-${trait}` }, buyer.traits[trait]);
  return { trait, select, element: make("div", {}, label, select) };
}

/** What was typed, in mm; what is not a length is said beside its field. */
function readTyped(fields: readonly Field[], unit: LengthUnit, words: Words): ReadonlyMap<string, number> {
  const typed = new Map<string, number>();
  for (const { id, input, problem } of fields) {
    const reading = parseReading(input.value.replace(/\bzoll\b/giu, "in"), { unit });
    const isLength = reading.kind === "length" && (reading.mm > 0 || id === "heelHeight");
    const isWrong = reading.kind === "refused" || (reading.kind === "length" && !isLength);
    if (reading.kind === "length" && isLength) typed.set(id, reading.mm);
    problem.hidden = !isWrong;
    problem.textContent = isWrong ? words.buyer.refused(input.value) : "";
    if (isWrong) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }
  return typed;
}

function saidTraits(fields: readonly TraitField[]): ReadonlyMap<BuyersTrait, boolean> {
  return new Map(
    fields.flatMap(({ trait, select: { value } }) => (value === "" ? [] : [[trait, value === "yes"]])),
  );
}

function chosenAnswers({ patterns, figures, pairs, answers }: BuyersFile, figure: number): readonly Told[] {
  return patterns.flatMap(({ code, title }, p) => {
    const answer = answers[pairs[p * figures.length + figure] ?? -1];
    return answer ? [{ code, title, ...answer }] : [];
  });
}

function typedParts(
  file: BuyersFile,
  body: Parameters<typeof answerBuyer>[1],
  words: Words,
): readonly HTMLElement[] {
  const answer = answerBuyer(file, body);
  const told = file.patterns.flatMap(({ code, title }, p) => {
    const found = answer.answers[p];
    return found ? [{ code, title, verdict: found.verdict, kind: found.kind, says: found.says }] : [];
  });
  return [
    make("div", { class: "two" }, likePart(answer, words), nextPart(answer, words)),
    ...toldParts(told, words),
  ];
}

function likePart({ like }: BuyersAnswer, { buyer, list }: Words): HTMLElement {
  const alike = like.filter(({ isAlike }) => isAlike);
  const [nearest] = like;
  const lines =
    alike.length > 0
      ? alike.map(({ figure }) => buyer.alike(figure))
      : [buyer.noneLike, ...(nearest ? [buyer.nearest(nearest.figure, list(nearest.differs))] : [])];
  return make(
    "section",
    { class: "card" },
    make("h3", {}, buyer.like),
    ...lines.map((line) => make("p", {}, line)),
  );
}

const mostNext = 5;

function nextPart({ takeNext }: BuyersAnswer, { buyer }: Words): HTMLElement {
  if (takeNext.length === 0) return make("span", {});
  return make(
    "section",
    { class: "card" },
    make("h3", {}, buyer.takeNext),
    make(
      "ul",
      { class: "notes" },
      ...takeNext
        .slice(0, mostNext)
        .map(({ term, patterns }) => make("li", {}, buyer.takeFor(term, patterns))),
    ),
  );
}

function toldParts(told: readonly Told[], words: Words): readonly HTMLElement[] {
  const of = (kind: FitKind): readonly Told[] => told.filter((each) => each.kind === kind);
  const kinds = fitKinds.filter((kind) => of(kind).length > 0);
  return [
    make(
      "ul",
      { class: "count" },
      ...kinds.map((kind) =>
        make("li", { class: kind }, sign(kind), words.buyer.counted(kind, of(kind).length)),
      ),
    ),
    make(
      "div",
      { class: "card" },
      make(
        "ul",
        { class: "answers" },
        ...kinds.map((kind) =>
          make(
            "li",
            { class: kind },
            sign(kind),
            make("span", { class: "kind" }, words.kinds[kind]),
            make("ul", {}, ...of(kind).map((each) => toldLine(each, words))),
          ),
        ),
      ),
    ),
  ];
}

function toldLine({ code, title, verdict, says }: Told, { verdicts }: Words): HTMLElement {
  const because = [verdicts[verdict], says].filter((text) => text !== "").join(" – ");
  return make(
    "li",
    { "data-pattern": code, "data-verdict": verdict },
    make("bdi", {}, title === "" ? code : title),
    " ",
    ...(title === "" ? [] : [make("bdi", { class: "code" }, code), " "]),
    make("span", { class: "why" }, `– ${because}`),
  );
}

function sign(kind: FitKind): HTMLElement {
  return make("span", { class: "sign", "aria-hidden": "true" }, kindSigns[kind]);
}
