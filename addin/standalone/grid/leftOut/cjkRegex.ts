import { sources } from "./cjkLetters.ts";

/* Stands in the page for `cjk-regex`, by which the grid knows Chinese, Japanese and Korean letters: the same, made while building. */

interface Letters {
  toRegExp(): RegExp;
}

export function all(): Letters {
  return { toRegExp: () => new RegExp(sources.all) };
}

export function letters(): Letters {
  return { toRegExp: () => new RegExp(sources.letters) };
}

export function punctuations(): Letters {
  return { toRegExp: () => new RegExp(sources.punctuations) };
}
