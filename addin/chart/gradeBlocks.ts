import type { GirthLine, GradePiece, GradePoint, GradeRule } from "./gradeRule.ts";

/** Shares of one measure: [across, along]. */
type Shares = readonly [number, number];

/** A corner of a block with the measures that move it. */
interface BlockPoint extends GradePoint {
  readonly moves: Readonly<Record<string, Shares>>;
}

interface Block extends Omit<GradePiece, "points"> {
  readonly points: readonly BlockPoint[];
}

/*
 * The shares at the girth lines are the classical ones: a quarter of a girth on each half front and half back, a half on
 * each half of a sleeve or stocking. The others (neck a sixth, depth of the armscye a quarter of the bust, height of the
 * sleeve cap a third of the upper arm, and where knee and calf lie) are rules of thumb of flat pattern drafting: common
 * practice, without one source. A user edits them all.
 */
const blocks: readonly Block[] = [
  bodice("Bodice front", { neckGirth: [0, -1 / 6] }, {}),
  bodice("Bodice back", {}, { neckGirth: [1 / 6, 1 / 16] }),
  {
    name: "Sleeve",
    garment: "Sleeve",
    origin: "fold of the sleeve, at the wrist",
    points: [
      fixed("Wrist at fold"),
      onLine("Wrist at seam", line("wrist line", "wristGirth", 2), { wristGirth: [1 / 2, 0] }),
      onLine("Underarm", line("upper arm line", "upperArmGirth", 2), {
        upperArmGirth: [1 / 2, -1 / 3],
        armLength: [0, 1],
      }),
      free("Top of cap", { armLength: [0, 1] }),
    ],
  },
  fittedSkirt("Skirt front"),
  fittedSkirt("Skirt back"),
  flaredSkirt("Flared skirt front"),
  flaredSkirt("Flared skirt back"),
  trousers("Trousers front"),
  trousers("Trousers back"),
  {
    name: "Hat band",
    garment: "Hat band",
    origin: "fold of the band, at the lower edge",
    points: [
      fixed("Lower edge at fold"),
      onLine("Lower edge at seam", line("lower edge", "headGirth", 2), { headGirth: [1 / 2, 0] }),
      onLine("Upper edge at seam", line("upper edge", "headGirth", 2), { headGirth: [1 / 2, 1 / 12] }),
      free("Upper edge at fold", { headGirth: [0, 1 / 12] }),
    ],
  },
  {
    name: "Hood side",
    garment: "Hood",
    origin: "front edge of the hood, at the neck",
    points: [
      fixed("Neck at front"),
      onLine("Neck at back", line("neck line", "neckGirth", 2), { neckGirth: [1 / 2, 0] }),
      onLine("Back of head", line("head line", "headGirth", 2), { headGirth: [1 / 2, 1 / 3] }),
      free("Top at back", { headGirth: [1 / 3, 3 / 5] }),
      free("Top at front", { headGirth: [0, 3 / 5] }),
    ],
  },
  {
    name: "Stocking",
    garment: "Stocking",
    origin: "fold of the stocking, at the heel",
    points: [
      onLine("Heel at seam", line("heel line", "heelGirth", 2), { heelGirth: [1 / 2, 0] }),
      onLine("Ankle at seam", line("ankle line", "ankleGirth", 2), {
        ankleGirth: [1 / 2, 0],
        insideLeg: [0, 1 / 10],
      }),
      onLine("Calf at seam", line("calf line", "calfGirth", 2), {
        calfGirth: [1 / 2, 0],
        insideLeg: [0, 2 / 5],
      }),
      onLine("Knee at seam", line("knee line", "kneeGirth", 2), {
        kneeGirth: [1 / 2, 0],
        insideLeg: [0, 11 / 20],
      }),
      onLine("Top at seam", line("top edge", "thighGirth", 2), {
        thighGirth: [1 / 2, 0],
        insideLeg: [0, 9 / 10],
      }),
      free("Top at fold", { insideLeg: [0, 9 / 10] }),
      free("Toe at fold", { footLength: [0, -1] }),
      onLine("Foot at seam", line("foot line", "footGirth", 2), {
        footGirth: [1 / 2, 0],
        footLength: [0, -1 / 2],
      }),
    ],
  },
];

/** The pieces for which there are grade rules, with their points. */
export const gradePieces: readonly GradePiece[] = blocks.map(({ points, ...piece }) => ({
  ...piece,
  points: points.map(({ name, line: girthLine }) => (girthLine ? { name, line: girthLine } : { name })),
}));

/**
 * The grade rules that come with the project. A point without a rule stays where it is. As every rule is a share of a
 * measure, the same shares of a figure’s measures give a diagram of its piece.
 */
export const defaultGradeRules: readonly GradeRule[] = blocks.flatMap(({ name: piece, points }) =>
  points.flatMap(({ name: point, moves }) =>
    Object.entries(moves).map(([measure, [across, along]]) => ({ piece, point, measure, across, along })),
  ),
);

function bodice(name: string, centreNeck: BlockPoint["moves"], shoulderNeck: BlockPoint["moves"]): Block {
  return {
    name,
    garment: "Bodice",
    origin: "centre line, at the waist",
    points: [
      fixed("Waist at centre"),
      onLine("Waist at side", line("waist line", "waistGirth", 2), { waistGirth: [1 / 4, 0] }),
      onLine("Underarm", line("bust line", "bustGirth", 2), {
        bustGirth: [1 / 4, -1 / 4],
        backWaistLength: [0, 1],
      }),
      free("Shoulder tip", { shoulderWidth: [1 / 2, -1 / 10], backWaistLength: [0, 1] }),
      free("Shoulder at neck", { neckGirth: [1 / 6, 0], ...shoulderNeck, backWaistLength: [0, 1] }),
      free("Neck at centre", { ...centreNeck, backWaistLength: [0, 1] }),
    ],
  };
}

function fittedSkirt(name: string): Block {
  return {
    name,
    garment: "Fitted skirt",
    origin: "centre line, at the waist",
    points: [
      fixed("Waist at centre"),
      onLine("Waist at side", line("waist line", "waistGirth", 2), { waistGirth: [1 / 4, 0] }),
      onLine("Hip at side", line("hip line", "hipGirth", 2), { hipGirth: [1 / 4, 0], waistToHip: [0, -1] }),
      onLine("Hem at side", line("hem", "hipGirth", 2), { hipGirth: [1 / 4, 0], waistToKnee: [0, -1] }),
      free("Hem at centre", { waistToKnee: [0, -1] }),
    ],
  };
}

/** The hem follows the waist and the length: it is wider than any girth under it. */
function flaredSkirt(name: string): Block {
  return {
    name,
    garment: "Flared skirt",
    origin: "centre line, at the waist",
    points: [
      fixed("Waist at centre"),
      onLine("Waist at side", line("waist line", "waistGirth", 2), { waistGirth: [1 / 4, 0] }),
      free("Hem at side", { waistGirth: [1 / 4, 0], waistToKnee: [1 / 3, -1] }),
      free("Hem at centre", { waistToKnee: [0, -1] }),
    ],
  };
}

/** Waist and hip go round both legs, so that each piece is on them twice; the others go round one leg. */
function trousers(name: string): Block {
  const ends = (what: string, side: string, girth: string, round: number, rest: BlockPoint["moves"]) => {
    const share = 1 / (4 * round);
    return {
      outer: onLine(`${what} at side`, line(`${what.toLowerCase()} line`, girth, round, 1), {
        [girth]: [share, 0],
        ...rest,
      }),
      inner: onLine(`${what} at ${side}`, line(`${what.toLowerCase()} line`, girth, round, -1), {
        [girth]: [-share, 0],
        ...rest,
      }),
    };
  };
  const waist = ends("Waist", "centre", "waistGirth", 2, { bodyRise: [0, 1] });
  const hip = ends("Hip", "centre", "hipGirth", 2, { bodyRise: [0, 1 / 3] });
  const thigh = ends("Thigh", "inside leg", "thighGirth", 1, {});
  const knee = ends("Knee", "inside leg", "kneeGirth", 1, { insideLeg: [0, -1 / 2] });
  const hem = ends("Hem", "inside leg", "ankleGirth", 1, { insideLeg: [0, -1] });
  const downwards = [waist, hip, thigh, knee, hem];
  return {
    name,
    garment: "Trousers",
    origin: "crease line, at the crotch",
    points: [...downwards.map(({ outer }) => outer), ...downwards.map(({ inner }) => inner).reverse()],
  };
}

function line(name: string, measure: string, times: number, end: 1 | -1 = 1): GirthLine {
  return { name, measure, times, end };
}

function onLine(name: string, girthLine: GirthLine, moves: BlockPoint["moves"]): BlockPoint {
  return { name, line: girthLine, moves };
}

function free(name: string, moves: BlockPoint["moves"]): BlockPoint {
  return { name, moves };
}

function fixed(name: string): BlockPoint {
  return { name, moves: {} };
}
