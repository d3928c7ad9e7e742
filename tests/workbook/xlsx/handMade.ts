import { strToU8, zipSync } from "fflate";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packages = "http://schemas.openxmlformats.org/package/2006";

interface HandMade {
  /** What stands inside `<worksheet>`. */
  readonly sheet: string;
  /** What stands inside `<workbookPr …/>`, for example `date1904="1"`. */
  readonly properties?: string;
  /** What stands inside `<styleSheet>`. */
  readonly styles?: string;
  /** More sheets: their attributes in the list of sheets and the kind of their relationship. */
  readonly moreSheets?: readonly { readonly name: string; readonly state?: string; readonly kind?: string }[];
  /** More parts by name, and relationships of the first sheet to them by kind. */
  readonly parts?: Readonly<Record<string, string>>;
  readonly related?: Readonly<Record<string, string>>;
}

/** A workbook file written by hand as ECMA-376 describes it, to read what our own writer never writes. */
export function handMade({
  sheet,
  properties = "",
  styles,
  moreSheets = [],
  parts = {},
  related = {},
}: HandMade): Uint8Array {
  const others = moreSheets.map((other, i) => ({
    kind: "worksheet",
    ...other,
    id: `rId${String(i + 10)}`,
    file: `sheet${String(i + 2)}.xml`,
  }));
  const relationship = (id: string, kind: string, target: string) =>
    `<Relationship Id="${id}" Type="${office}/${kind}" Target="${target}"/>`;
  const relationships = (...each: readonly string[]) =>
    `<Relationships xmlns="${packages}/relationships">${each.join("")}</Relationships>`;
  const worksheet = (inner: string) => `<worksheet xmlns="${main}" xmlns:r="${office}">${inner}</worksheet>`;
  const files: Record<string, string> = {
    "[Content_Types].xml": `<Types xmlns="${packages}/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`,
    "_rels/.rels": relationships(relationship("rId1", "officeDocument", "xl/workbook.xml")),
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${office}"><workbookPr ${properties}/><sheets><sheet name="First" sheetId="1" r:id="rId1"/>${others
      .map(
        ({ name, state, id }, i) =>
          `<sheet name="${name}" sheetId="${String(i + 2)}"${state ? ` state="${state}"` : ""} r:id="${id}"/>`,
      )
      .join("")}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relationships(
      relationship("rId1", "worksheet", "worksheets/sheet1.xml"),
      ...(styles === undefined ? [] : [relationship("rId2", "styles", "styles.xml")]),
      ...others.map(({ id, kind, file }) => relationship(id, kind, `${kind}s/${file}`)),
    ),
    "xl/worksheets/sheet1.xml": worksheet(sheet),
    ...(styles !== undefined && { "xl/styles.xml": `<styleSheet xmlns="${main}">${styles}</styleSheet>` }),
    ...Object.fromEntries(others.map(({ kind, file }) => [`xl/${kind}s/${file}`, worksheet("<sheetData/>")])),
    "xl/worksheets/_rels/sheet1.xml.rels": relationships(
      ...Object.entries(related).map(([kind, target], i) =>
        relationship(`rId${String(i + 1)}`, kind, target),
      ),
    ),
    ...parts,
  };
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));
}
