export type { GridWithoutScreen as HeadlessGrid } from "../../../addin/standalone/grid/withoutScreen.ts";
export { openWithoutScreen as openHeadless } from "../../../addin/standalone/grid/withoutScreen.ts";
