export { addresses } from "./addIn.ts";
export { helpPages } from "./pages/helpPages.ts";
export { readingPages } from "./pages/readingPages.ts";
export { manifestXml } from "./manifestXml.ts";
export { manifestJson } from "./manifestJson.ts";
