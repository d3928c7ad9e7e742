import { afterEach, describe, expect, it, vi } from "vitest";
import { scratch, scratchCode } from "../../../addin/similarity/wasm/scratch.ts";

const gigabyte = 2 ** 30;

describe("the loops in WebAssembly", () => {
  it("are a module that the WebAssembly specification allows", () => {
    expect(WebAssembly.validate(scratchCode)).toBe(true);
  });

  it("get as much memory as is asked for, and keep it", () => {
    expect(scratch(100_000)?.memory.buffer.byteLength).toBeGreaterThanOrEqual(100_000);
    const before = scratch(300_000)?.memory.buffer;
    expect(before?.byteLength).toBeGreaterThanOrEqual(300_000);
    expect(scratch(1)?.memory.buffer).toBe(before);
  });

  it("are left alone when there is not so much memory, and go on with less", () => {
    // Addresses of 32 bits reach 4 GB.
    expect(scratch(5 * gigabyte)).toBeUndefined();
    expect(scratch(300_000)).toBeDefined();
  });
});

describe("where there are no vector instructions", () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.resetModules();
  });

  it.each([
    ["no WebAssembly at all", undefined],
    [
      "no page may bring code",
      {
        ...{ Memory: WebAssembly.Memory, Instance: WebAssembly.Instance },
        Module: function refused() {
          throw new WebAssembly.CompileError("not allowed here");
        },
      },
    ],
  ])("says so (%s)", async (_, stub) => {
    vi.resetModules();
    vi.stubGlobal("WebAssembly", stub);
    const without = await import("../../../addin/similarity/wasm/scratch.ts");
    expect(without.scratch(1)).toBeUndefined();
  });
});
