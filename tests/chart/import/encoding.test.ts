import { describe, expect, test } from "vitest";
import { decodeText, detectEncoding } from "../../../addin/chart/import/encoding.ts";
import { fileKind, requireText } from "../../../addin/chart/import/fileKind.ts";
import { InputError } from "../../../addin/measures/inputError.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string, little: boolean): Uint8Array => {
  const bytes = new DataView(new ArrayBuffer(text.length * 2));
  for (let i = 0; i < text.length; i++) bytes.setUint16(i * 2, text.charCodeAt(i), little);
  return new Uint8Array(bytes.buffer);
};
const bytesOf = (...bytes: number[]): Uint8Array => Uint8Array.from(bytes);
const join = (...parts: Uint8Array[]): Uint8Array => Uint8Array.from(parts.flatMap((part) => [...part]));

const text = "Figure;Bust\nZoë ⅜;13,5\n";

describe("the encoding of a file", () => {
  test.each([
    ["UTF-8", utf8(text), "utf-8"],
    ["UTF-8 with mark", join(bytesOf(0xef, 0xbb, 0xbf), utf8(text)), "utf-8"],
    ["UTF-16 with mark", join(bytesOf(0xff, 0xfe), utf16(text, true)), "utf-16le"],
    ["UTF-16, high byte first, with mark", join(bytesOf(0xfe, 0xff), utf16(text, false)), "utf-16be"],
    ["UTF-16 without mark", utf16(text, true), "utf-16le"],
    ["UTF-16, high byte first, without mark", utf16(text, false), "utf-16be"],
  ] as const)("%s is told and read", (_, bytes, encoding) => {
    expect(detectEncoding(bytes)).toBe(encoding);
    expect(decodeText(bytes, encoding)).toBe(text);
  });

  // WHATWG Encoding Standard, index windows-1252: 0x80 €, 0x93 “, 0x96 –, 0xBD ½, 0xEB ë.
  test("Windows-1252 is what is not valid UTF-8", () => {
    const bytes = bytesOf(0x5a, 0x6f, 0xeb, 0x2c, 0x35, 0xbd, 0x2c, 0x80, 0x93, 0x96);
    expect(detectEncoding(bytes)).toBe("windows-1252");
    expect(decodeText(bytes, "windows-1252")).toBe("Zoë,5½,€“–");
  });

  test("a wrong choice loses no bytes for the right one", () => {
    expect(decodeText(utf8("ë"), "windows-1252")).toBe("Ã«");
  });
});

describe("a file that is not text", () => {
  test.each([
    ["a PDF document", utf8("%PDF-1.7 ...")],
    ["a picture (PNG)", bytesOf(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a)],
    ["a picture (JPEG)", bytesOf(0xff, 0xd8, 0xff, 0xe0)],
    ["a web page", utf8("\n<!DOCTYPE html><html></html>")],
    [
      "an OpenDocument spreadsheet (.ods)",
      utf8("PK\u0003\u0004....mimetypeapplication/vnd.oasis.opendocument.spreadsheet"),
    ],
    ["a compressed folder (ZIP)", utf8("PK\u0003\u0004....photos/one.jpg")],
    ["a file that is not text at all", bytesOf(1, 2, 3, 0, 5, 6, 0, 8, 9)],
  ])("renamed .csv is refused: %s", (like, bytes) => {
    expect(fileKind(bytes)).toBe("other");
    expect(() => {
      requireText(bytes, "chart.csv");
    }).toThrow(
      new InputError(
        `“chart.csv” is not a text file: it looks like ${like}. Open it in the program that it was made with, save the chart as CSV or .xlsx, and import that.`,
      ),
    );
  });

  test("a workbook with a password, or of the older Office, is told from other files", () => {
    const bytes = bytesOf(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1);
    expect(fileKind(bytes)).toBe("office container");
    expect(() => {
      requireText(bytes, "chart.csv");
    }).toThrow("it looks like an old Excel or Word file (.xls, .doc)");
  });

  test("an Excel workbook is told by its bytes, whatever its name", () => {
    expect(fileKind(utf8("PK\u0003\u0004....[Content_Types].xml....xl/workbook.xml"))).toBe("xlsx");
  });

  test("an empty file is said to be empty", () => {
    expect(fileKind(bytesOf())).toBe("empty");
    expect(() => {
      requireText(bytesOf(), "chart.csv");
    }).toThrow("“chart.csv” is empty.");
  });

  test("text passes", () => {
    expect(fileKind(utf8(text))).toBe("text");
    expect(() => {
      requireText(utf16(text, true), "chart.csv");
    }).not.toThrow();
  });
});
