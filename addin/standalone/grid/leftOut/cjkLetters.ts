import { all, letters, punctuations } from "cjk-regex";

/** Runs while building, see `runAtBuild.mjs`: the page gets what it exports, without the tables of all Unicode from which that is made. */
export const sources = {
  all: all().toRegExp().source,
  letters: letters().toRegExp().source,
  punctuations: punctuations().toRegExp().source,
};
