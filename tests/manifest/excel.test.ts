import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { get } from "node:https";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { httpsAddress } from "../../manifest/httpsAddress.mjs";
import { nextSteps, removeCommand, sideloadCommand } from "../../manifest/sideload.mjs";
import { freePort } from "../browser/startPage.ts";

// README of the package office-addin-dev-settings: sideload <manifest> [app-type] with --app and --document; unregister <manifest>.
describe("adding the add-in to Excel", () => {
  it.each(["win32", "darwin"])("opens Excel with it on %s", (system) => {
    const [program, given] = sideloadCommand(system, "dist/manifest.xml", undefined) ?? [];
    expect(program).toBe("npx");
    expect(given?.slice(2)).toEqual(["sideload", "dist/manifest.xml", "desktop", "--app", "excel"]);
    expect(nextSteps(steps(system, true))).toContain("Excel opens with Measure Book");
  });

  it("opens a workbook on the web with it, on any system", () => {
    const workbook = "https://example.org/workbook";
    expect(sideloadCommand("linux", "m.xml", workbook)?.[1].slice(2)).toEqual([
      ...["sideload", "m.xml", "web", "--document", workbook],
    ]);
  });

  it("says on a system without Excel how to upload it", () => {
    expect(sideloadCommand("linux", "m.xml", undefined)).toBeUndefined();
    expect(nextSteps(steps("linux", false))).toMatch(
      /There is no Excel.*\n1\..*\n2\. .*Upload My Add-in.*\n3\. Browse to m\.xml/,
    );
  });

  it("says what to do when Excel could not be told of it, and takes away what it added", () => {
    expect(nextSteps(steps("win32", false))).toMatch(/could not be told of it.*\n1\./);
    expect(removeCommand("win32", "m.xml", undefined)?.[1].slice(2)).toEqual(["unregister", "m.xml"]);
    expect(removeCommand("darwin", "m.xml", undefined)).toBeUndefined();
    expect(nextSteps(steps("darwin", true))).toContain("delete its file in");
  });
});

function steps(system: string, sideloaded: boolean) {
  return { system, sideloaded, address: "https://localhost:3000/", manifest: "m.xml", web: undefined };
}

describe("the address of the add-in", () => {
  it("is taken with or without the last slash", () => {
    expect(httpsAddress("https://example.org/fit")).toBe("https://example.org/fit/");
    expect(httpsAddress("https://localhost:3000/")).toBe("https://localhost:3000/");
  });

  it.each(["http://example.org/", "example.org", "", "https://example.org/?a=1", "https://me@example.org/"])(
    "is not %j",
    (text) => {
      expect(httpsAddress(text)).toBeUndefined();
    },
  );

  it("is refused by npm run build in words, before anything is built", () => {
    const { code, output } = run("manifest/build.mjs", "--url", "http://example.org/");
    expect(code).toBe(1);
    expect(output).toContain("“http://example.org/” cannot be the address of the add-in.");
  });
});

describe("npm run excel", () => {
  const folder = mkdtempSync(path.join(tmpdir(), "measure-book-excel-"));
  beforeAll(() => {
    execFileSync("openssl", [
      ...["req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2", "-subj", "/CN=localhost"],
      ...["-addext", "subjectAltName=DNS:localhost"],
      ...["-keyout", path.join(folder, "localhost.key"), "-out", path.join(folder, "localhost.crt")],
    ]);
    writeFileSync(path.join(folder, "functions.json"), "{}");
    writeFileSync(path.join(folder, "manifest.xml"), "<OfficeApp/>");
  });
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  it("serves the built folder over https with the certificate, and says what it did and what to do next", async () => {
    const port = await freePort();
    const child = spawn(process.execPath, [
      ...["manifest/excel.mjs", "--no-sideload", "--port", String(port)],
      ...["--certificates", folder, "--built", folder],
    ]);
    try {
      let said = "";
      await new Promise<void>((resolve, reject) => {
        child.stdout.on("data", (chunk: Buffer) => {
          said += chunk.toString();
          if (/Browse to/.test(said)) resolve();
        });
        child.on("close", () => {
          reject(new Error(said));
        });
      });
      expect(said).toContain(`served at https://localhost:${String(port)}/`);
      const answer = await fetched(port, "functions.json", readFileSync(path.join(folder, "localhost.crt")));
      expect(answer).toEqual({ status: 200, origin: "*", text: "{}" });
    } finally {
      child.kill("SIGKILL");
    }
  });

  it.each([
    [["--port", "none"], "“none” is not a port."],
    [["--web", "workbook.xlsx"], "“workbook.xlsx” is not the address of a workbook."],
    [["--certificates", "tests"], "localhost.crt is missing"],
  ])("refuses %j in words", (given, words) => {
    const { code, output } = run("manifest/excel.mjs", ...given);
    expect(code).toBe(1);
    expect(output).toContain(words);
  });
});

function run(...given: string[]): { code: number; output: string } {
  try {
    return { code: 0, output: execFileSync(process.execPath, given, { encoding: "utf8", stdio: "pipe" }) };
  } catch (error) {
    const { status, stderr } = error as { status: number; stderr: string };
    return { code: status, output: stderr };
  }
}

function fetched(port: number, file: string, ca: Buffer) {
  return new Promise((resolve, reject) => {
    get(`https://localhost:${String(port)}/${file}`, { ca }, (response) => {
      let text = "";
      response.on("data", (chunk: Buffer) => (text += chunk.toString()));
      response.on("end", () => {
        resolve({
          status: response.statusCode,
          origin: response.headers["access-control-allow-origin"],
          text,
        });
      });
    }).on("error", reject);
  });
}
