import { apartFunction } from "./apart.ts";
import { basesFunction } from "./bases.ts";
import { clearanceFunction } from "./clearance.ts";
import { compareFunction } from "./compare.ts";
import { dartsFunction } from "./darts.ts";
import { deltaFunction } from "./delta.ts";
import type { FunctionDescriptor } from "./descriptor.ts";
import { easeCheckFunction } from "./easeCheck.ts";
import { easeFunction } from "./ease.ts";
import { expectedFunction } from "./expected.ts";
import { flagsFunction } from "./flags.ts";
import { flareFunction } from "./flare.ts";
import { gradeFunction } from "./grade.ts";
import { groupsFunction } from "./groups.ts";
import { lengthFunction } from "./length.ts";
import { whatFitsFunction } from "./whatFits.ts";
import { nearestFunction } from "./nearest.ts";
import { listingWordsFunction } from "./listingWords.ts";
import { measureNextFunction } from "./measureNext.ts";
import { overFunction } from "./over.ts";
import { reasonsFunction } from "./reasons.ts";
import { resizeFunction } from "./resize.ts";
import { figureScaleFunction } from "./figureScale.ts";
import { scoreFunction } from "./score.ts";
import { sharesFunction } from "./shares.ts";
import { stepsFunction } from "./steps.ts";
import { tapeFunction } from "./tape.ts";
import { temFunction } from "./tem.ts";
import { treeFunction } from "./tree.ts";
import { wardrobeFunction } from "./wardrobe.ts";
import { wearersFunction } from "./wearers.ts";

/** Every worksheet function, in the order of the reference: from readings over fit to figures that share a body. */
export const descriptors: readonly FunctionDescriptor[] = [
  lengthFunction,
  tapeFunction,
  temFunction,
  flagsFunction,
  scoreFunction,
  expectedFunction,
  deltaFunction,
  compareFunction,
  overFunction,
  easeFunction,
  easeCheckFunction,
  clearanceFunction,
  whatFitsFunction,
  reasonsFunction,
  wearersFunction,
  wardrobeFunction,
  listingWordsFunction,
  stepsFunction,
  gradeFunction,
  resizeFunction,
  flareFunction,
  dartsFunction,
  figureScaleFunction,
  apartFunction,
  nearestFunction,
  sharesFunction,
  groupsFunction,
  treeFunction,
  basesFunction,
  measureNextFunction,
];
