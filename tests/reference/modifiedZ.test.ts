import { describe, expect, it } from "vitest";
import { modifiedZ, robustSpread } from "../../addin/checking/modifiedZ.ts";

describe("modified z", () => {
  // Eight readings, one far off; data of NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.17.1, from memory.
  // Expected values are R’s for these very numbers, whatever their source: Rscript -e 'x<-c(199.31,199.53,200.19,200.82,201.92,201.95,202.18,245.57);
  //   m<-median(x); print(0.6745*(x-m)/median(abs(x-m)), digits=10)'   (R 4.2.2)
  it("gives the values of the NIST data", () => {
    const z = modifiedZ([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]);
    expect(z[7]).toBeCloseTo(29.9627, 4);
    expect(z[0]).toBeCloseTo(-1.396452261307, 9);
    expect(z.filter((value) => Math.abs(value) > 3.5)).toHaveLength(1);
  });

  // R 4.2.2: mad(c(1, 3, 3, 6, 8, 10, 10, 1000)) is 5.1891.
  it("uses the median absolute deviation as R does", () => {
    const deviations = [1, 3, 3, 6, 8, 10, 10, 1000].map((value) => value - 7);
    expect(robustSpread(deviations)).toBeCloseTo(5.1891, 3);
  });
});
