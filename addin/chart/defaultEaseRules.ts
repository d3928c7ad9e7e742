import type { EaseAmount, EaseRule } from "./easeRule.ts";

/** Percent of the body, and mm that stay at every size. */
type Amount = readonly [percent: number, mm: number];

/**
 * The ease rules that come with the project: all its own, each with its reason.
 *
 * They are made for figures, which do not breathe, sit or reach: the least is what it takes to close the garment and to let
 * it hang without drag lines, not what a person needs to live in it. The mm are what turnings and a closure take up, the same
 * at every size. The most is where a dressmaker would begin to call it another garment.
 */
export const defaultEaseRules: readonly EaseRule[] = [
  ...rules("Close-fitting bodice", [
    need(
      "bustGirth",
      [1, 1],
      [7, 1.5],
      "smooth over the bust without drag lines, no fold when it is pinched",
    ),
    need("waistGirth", [0.5, 1], [6, 1.5], "sits on the waist and holds its place there"),
    ...bodiceDetails(),
  ]),
  ...rules("Corset", [
    need("bustGirth", [-4, 0], [3, 1], "holds the bust; the lacing may stand open"),
    need(
      "waistGirth",
      [-10, 0],
      [1, 0],
      "cut smaller than the waist, so that a lacing gap stays when it is laced",
    ),
    may("hipGirth", [-4, 0], [4, 1], "spreads over the top of the hip"),
    may("backWaistLength", [-2, -0.5], [2, 0.5], "its waist must lie on the waist, or it cannot be laced"),
  ]),
  ...rules("Sheath dress", [
    need("bustGirth", [1, 1], [7, 1.5], "as a close-fitting bodice"),
    need("waistGirth", [0.5, 1], [7, 1.5], "shaped to the waist"),
    need("hipGirth", [1, 1], [6, 1.5], "shows the hip: more hangs in folds below the seat"),
    ...bodiceDetails(),
  ]),
  ...rules("Dress", [
    need(
      "bustGirth",
      [3, 1],
      [12, 2],
      "follows the bust with room for a lining; beyond an eighth the armholes gape",
    ),
    need(
      "waistGirth",
      [1.5, 1],
      [10, 2],
      "a waist seam that is seen to fit; beyond a tenth it hangs off the hip",
    ),
    may(
      "hipGirth",
      [2, 1],
      undefined,
      "the skirt may be as full as it likes, but must not catch on the seat",
    ),
    ...bodiceDetails(),
  ]),
  ...rules("Pinafore", [
    need(
      "bustGirth",
      [4, 1.5],
      [18, 3],
      "goes over a blouse, which its thickness alone does not say: sleeves bulk",
    ),
    need("waistGirth", [2, 1], [14, 3], "tied or buttoned over other clothes"),
    may("hipGirth", [3, 1], undefined, "as a dress"),
  ]),
  ...rules("Straight dress", [
    need("bustGirth", [5, 1.5], [15, 2], "hangs from the bust past the waist: less would hold at the waist"),
    need("hipGirth", [3, 1.5], [14, 2], "falls past the hip without resting on it"),
    sleeveOfBodice(),
  ]),
  ...rules("Loose dress", [
    need("bustGirth", [12, 2], [40, 4], "hangs from the shoulders; beyond two fifths it is a tent"),
    may("hipGirth", [4, 1], undefined, "hangs free of the hip"),
  ]),
  ...rules("Tent dress", [
    need("bustGirth", [30, 4], undefined, "stands off everywhere; only neck and shoulders hold it"),
    may("hipGirth", [10, 2], undefined, "stands off the hip as well"),
  ]),
  ...rules("Wrapped robe", [
    need("bustGirth", [8, 2], undefined, "crosses over in front: the lap takes what is too much"),
    may("hipGirth", [5, 2], undefined, "crosses over in front, less would open at the knee"),
  ]),
  ...rules("Loose top", [
    need("bustGirth", [10, 2], [40, 4], "from a shirt to a tunic: hangs free of the body"),
    may("upperArmGirth", [8, 1], [60, 2], "from a shirt sleeve to a full one"),
  ]),
  ...rules("Cape", [
    need("bustGirth", [15, 3], undefined, "goes over bust and arms together, which hang beside the body"),
    may("shoulderGirth", [6, 2], undefined, "goes over the shoulders with the arms down"),
  ]),
  ...rules("Jacket", [
    need(
      "bustGirth",
      [8, 2],
      [26, 3],
      "over what is worn under it, so that it slides on; beyond a quarter it is a coat",
    ),
    may("hipGirth", [5, 2], [25, 3], "does not ride up on the hip"),
    may("upperArmGirth", [10, 1], [60, 2], "passes the sleeve under it"),
  ]),
  ...rules("Coat", [
    need("bustGirth", [10, 2], [36, 4], "over everything, lining and interlining of its own"),
    may("hipGirth", [6, 2], undefined, "may flare; less would ride up on the hip"),
    may("upperArmGirth", [12, 1], [70, 2], "passes two sleeves under it"),
  ]),
  ...rules("Fitted skirt", [
    need(
      "waistGirth",
      [0.5, 0.5],
      [4, 1.5],
      "a waistband rests on the waist: more, and the skirt turns round",
    ),
    need(
      "hipGirth",
      [1.5, 1],
      [7.5, 1.5],
      "a pencil skirt lies on the hip; a figure that does not sit needs no more",
    ),
  ]),
  ...rules("Flared skirt", [
    need("waistGirth", [0.5, 0.5], [4, 1.5], "a waistband, as of a fitted skirt"),
    may("hipGirth", [3, 1], undefined, "flared, gathered or pleated: as full as it likes"),
  ]),
  ...rules("Trousers", [
    need("waistGirth", [0.5, 0.5], [5, 1.5], "a waistband, as of a skirt; a belt takes a little"),
    need("hipGirth", [3, 1], [14, 2], "covers seat and crotch without pulling to a whisker"),
    may("thighGirth", [4, 1], undefined, "the leg hangs from the seat"),
  ]),
  ...rules("Shorts", [
    need("waistGirth", [0.5, 0.5], [5, 1.5], "as trousers"),
    need("hipGirth", [3, 1], [16, 2], "as trousers, some cut fuller"),
    may("thighGirth", [4, 1], undefined, "the leg stands off the thigh at its hem"),
  ]),
  ...rules("Jumpsuit", [
    need("bustGirth", [4, 1], [22, 3], "a bodice that slides up and down with the legs, over a shirt or not"),
    need(
      "hipGirth",
      [4, 1],
      [20, 3],
      "a little more than trousers: it hangs from the shoulders and cannot be pulled up",
    ),
    may("waistGirth", [2, 1], [30, 3], "from drawn in to straight; it is not held there"),
    may("torsoGirth", [2, 1], [9, 2], "less cuts in between the legs, more hangs there"),
    may("thighGirth", [4, 1], undefined, "as trousers"),
    sleeveOfBodice(),
  ]),
  ...rules("Leggings", [
    need("waistGirth", [-15, 0], [4, 1], "knit: held by its stretch"),
    need("hipGirth", [-20, 0], [4, 1], "knit: lies on the skin without folds"),
    may("thighGirth", [-20, 0], [5, 1], "knit: lies on the skin without folds"),
    may("calfGirth", [-20, 0], [6, 1], "knit: the calf is what it is pulled over"),
  ]),
  ...rules("Briefs", [
    need("waistGirth", [-20, 0], [8, 0], "from a knit that clings to a drawn-in leg of cotton"),
    need("hipGirth", [-20, 0], [8, 0], "the same; more shows under a skirt"),
  ]),
  ...rules("Tights", [
    need("waistGirth", [-20, 0], [4, 1], "held up by its stretch"),
    need("hipGirth", [-22, 0], [3, 1], "lies on the skin without folds"),
    may("calfGirth", [-25, 0], [2, 0], "lies on the skin without folds"),
    may("ankleGirth", [-25, 0], [8, 0], "may fold a little at the ankle"),
    may("footLength", [-15, 0], [4, 1], "the foot must be inside; knit stretches along it"),
  ]),
  ...rules("Sleeve", [
    need("upperArmGirth", [6, 1], [40, 3], "from a fitted sleeve to a full one"),
    may("wristGirth", [5, 1], undefined, "the hand decides; the wrist must not be pinched"),
  ]),
  ...["Hosiery", "Socks", "Ankle socks"].flatMap((name) =>
    rules(name, [
      ...(name === "Ankle socks"
        ? []
        : [need("calfGirth", [-25, 0], [2, 0], "held up by its stretch: no fold")]),
      may("ankleGirth", [-25, 0], [8, 0], "may fold a little at the ankle"),
      ...(name === "Hosiery" ? [may("thighGirth", [-25, 0], [2, 0], "held up by its stretch")] : []),
      may("footLength", [-15, 0], [4, 1], "the foot must be inside; knit stretches along it"),
    ]),
  ),
  ...rules("Shoe", [
    need("footLength", [0, 0], [8, 1], "measured inside: the foot must be in it, and must not slide out"),
    may("footWidth", [0, 0], [12, 1], "measured inside: the foot must be in it"),
    need(
      "heelHeight",
      [-10, -1.5],
      [10, 1.5],
      "a foot is made for one heel: on another the figure tips over",
    ),
  ]),
  ...rules("Slipper", [
    need("footLength", [0, 0], [12, 1.5], "soft and open behind: may be longer than a shoe"),
    may("footWidth", [0, 0], [18, 1.5], "measured inside: the foot must be in it"),
    may("heelHeight", [-10, -1.5], [10, 1.5], "flat, for a flat foot"),
  ]),
  ...rules("Glove", [
    need("handGirth", [0, 0], [12, 1], "the hand must be inside: fingers do not bend in"),
    may("handLength", [0, 0], [10, 1], "the fingers must be inside"),
  ]),
  ...rules("Headwear", [
    need(
      "headGirth",
      [0, 0],
      [6, 1.5],
      "sits where it is measured: smaller it perches, larger it slides over the eyes",
    ),
  ]),
  ...rules("Hood", [
    need("headGirth", [5, 2], [40, 4], "a bag that lies over hair or wig and hangs from the neck"),
  ]),
];

interface Row {
  readonly measure: string;
  readonly least: Amount;
  readonly most: Amount | undefined;
  readonly required: boolean;
  readonly why: string;
}

function need(measure: string, least: Amount, most: Amount | undefined, why: string): Row {
  return { measure, least, most, required: true, why };
}

function may(measure: string, least: Amount, most: Amount | undefined, why: string): Row {
  return { ...need(measure, least, most, why), required: false };
}

function sleeveOfBodice(): Row {
  return may("upperArmGirth", [5, 1], [45, 2], "from a fitted sleeve to a puffed one");
}

/** What fitted bodices share: the sleeve at the upper arm, and the place of the waist. */
function bodiceDetails(): readonly Row[] {
  const why = "the waist seam lies on the waist: on a back of 88 mm, 3 mm off are seen";
  return [sleeveOfBodice(), may("backWaistLength", [-1.5, -0.5], [2.5, 0.5], why)];
}

function rules(garmentClass: string, rows: readonly Row[]): readonly EaseRule[] {
  return rows.map(({ measure, least, most, required, why }) => ({
    ...{ garmentClass, measure, least: amount(least) },
    ...(most && { most: amount(most) }),
    ...{ required, source: `The project’s own: ${why}` },
  }));
}

function amount([percent, mm]: Amount): EaseAmount {
  return { percent, mm };
}
