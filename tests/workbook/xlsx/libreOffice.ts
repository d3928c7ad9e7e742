import { execFile } from "node:child_process";
import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";
import { findLibreOffice } from "../../programs.mjs";

/** LibreOffice takes a few seconds to start, more when other tests run beside it. */
export const libreOfficeTimeout = 180_000;

/**
 * One sheet of a workbook file as LibreOffice reads and calculates it, as CSV with commas; numbers in full,
 * whatever their number format.
 *
 * @throws {Error} when LibreOffice is not installed, or cannot read the file or find the sheet
 */
export async function convertToCsv(file: string, sheet: string): Promise<string> {
  const { name } = path.parse(file);
  const files = await convert([file], allSheetsAsCsv);
  const csv = files.get(`${name}-${sheet}.csv`);
  if (!csv) throw new Error(`LibreOffice gave no sheet “${sheet}”, only: ${[...files.keys()].join(", ")}`);
  return new TextDecoder().decode(csv);
}

/** For `convert`: comma, double quote, UTF-8, from the first line; every sheet to a file `workbook-sheet.csv`. */
export const allSheetsAsCsv = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1";

/**
 * What LibreOffice makes of files in another format, for example `xlsx` or `pdf`: contents by file name.
 *
 * @throws {Error} when LibreOffice is not installed, or gives nothing
 */
export async function convert(
  files: readonly string[],
  format: string,
): Promise<ReadonlyMap<string, Uint8Array>> {
  const soffice = findLibreOffice();
  if (soffice === undefined)
    throw new Error(
      "LibreOffice is needed for this test. Run npm test, which installs it, or set SOFFICE_PATH to its soffice.",
    );
  const folder = await mkdtemp(path.join(os.tmpdir(), "measure-book-office-"));
  try {
    const out = path.join(folder, "out");
    // A profile of its own, so that it runs beside an open LibreOffice and beside other tests.
    const profile = `-env:UserInstallation=${pathToFileURL(path.join(folder, "profile")).href}`;
    const { stderr } = await promisify(execFile)(
      soffice,
      [profile, "--headless", "--convert-to", format, "--outdir", out, ...files],
      { timeout: libreOfficeTimeout },
    );
    const names = await readdir(out).catch(() => []);
    if (names.length === 0) throw new Error(`LibreOffice could not convert ${files.join(", ")}: ${stderr}`);
    const contents = names.map(async (name) => [name, await readFile(path.join(out, name))] as const);
    return new Map(await Promise.all(contents));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
