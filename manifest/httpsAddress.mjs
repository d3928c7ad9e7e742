/** The https address of a folder, with its last slash; `undefined` for anything that Office would not take. */
export function httpsAddress(text) {
  if (!URL.canParse(text)) return undefined;
  const url = new URL(text);
  if (url.protocol !== "https:" || url.search !== "" || url.hash !== "" || url.username !== "")
    return undefined;
  return url.href.endsWith("/") ? url.href : `${url.href}/`;
}
