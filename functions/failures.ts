import type { Failure } from "./descriptor.ts";

/** Failures that several functions share, in the words of the reference. */
export const notANumber: Failure = {
  when: "A cell holds text that is not a number, or an error. The message quotes it.",
  shows: "#VALUE!",
};

export const notALength: Failure = {
  when: "The reading is not a length: a word, a range such as 5-6, below zero, an error. The message quotes it.",
  shows: "#VALUE!",
};

export const notAUnit: Failure = { when: "A unit is not mm, cm or in.", shows: "#VALUE!" };

export const sizesDiffer: Failure = {
  when: "The two ranges differ in size and neither is a single cell, row or column.",
  shows: "#VALUE!",
};

export const emptyChart: Failure = {
  when: "The chart holds no figures or no measures.",
  shows: "#VALUE!",
};

export const unknownFigure: Failure = {
  when: "A figure is not in the chart. The message offers the nearest names.",
  shows: "#N/A",
};

export const badTolerances: Failure = {
  when: "The tolerances have no headings Measure and Tolerance, or one is not a number.",
  shows: "#VALUE!",
};

export const nothingToCompare: Failure = {
  when: "No measure of the chart takes part in the chosen zone.",
  shows: "#VALUE!",
};
