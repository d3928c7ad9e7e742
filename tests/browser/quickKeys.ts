import type { Page } from "playwright-core";

/**
 * Types as fast as the page takes it: the key events that playwright’s keyboard sends, one after the other in their order,
 * without waiting for the page between two of them.
 */
export interface QuickKeys {
  /** A text of characters that an American keyboard has. */
  type(text: string): Promise<void>;
  press(key: keyof typeof named, times?: number): Promise<void>;
  /** How many keys were pressed so far. */
  readonly count: number;
}

const named = { Enter: 13, Escape: 27, ArrowUp: 38, ArrowDown: 40 } as const;

/** Keys with signs on them: alone, with Shift, code and number (W3C, “UI Events KeyboardEvent code Values”; its annex on `keyCode`). */
const signs: readonly (readonly [string, string, string, number])[] = [
  ..."1!2@3#4$5%6^7&8*9(0)".matchAll(/(\d)(.)/g),
].map(([, digit = "", shifted = ""]) => [digit, shifted, `Digit${digit}`, digit.charCodeAt(0)] as const);

const keys = new Map<string, { readonly code: string; readonly number: number }>([
  ...signs
    .concat([
      [";", ":", "Semicolon", 186],
      ["=", "+", "Equal", 187],
      [",", "<", "Comma", 188],
      ["-", "_", "Minus", 189],
      [".", ">", "Period", 190],
      ["/", "?", "Slash", 191],
      ["[", "{", "BracketLeft", 219],
      ["\\", "|", "Backslash", 220],
      ["]", "}", "BracketRight", 221],
      ["'", '"', "Quote", 222],
      [" ", " ", "Space", 32],
    ])
    .flatMap(([alone, shifted, code, number]) =>
      [alone, shifted].map((sign) => [sign, { code, number }] as const),
    ),
  ..."abcdefghijklmnopqrstuvwxyz".split("").flatMap((letter) => {
    const key = { code: `Key${letter.toUpperCase()}`, number: letter.toUpperCase().charCodeAt(0) };
    return [[letter, key] as const, [letter.toUpperCase(), key] as const];
  }),
]);

export async function quickKeys(page: Page): Promise<QuickKeys> {
  const browser = await page.context().newCDPSession(page);
  let count = 0;
  const send = async (key: string, code: string, number: number, text?: string): Promise<void> => {
    count++;
    const event = { key, code, windowsVirtualKeyCode: number };
    await Promise.all([
      browser.send("Input.dispatchKeyEvent", {
        ...event,
        ...(text === undefined ? { type: "rawKeyDown" } : { type: "keyDown", text, unmodifiedText: text }),
      }),
      browser.send("Input.dispatchKeyEvent", { ...event, type: "keyUp" }),
    ]);
  };
  return {
    type: async (text) => {
      await Promise.all(
        [...text].map((sign) => {
          const key = keys.get(sign);
          if (!key) throw new Error(`“${sign}” is not on the keyboard.`);
          return send(sign, key.code, key.number, sign);
        }),
      );
    },
    press: async (key, times = 1) => {
      // Enter writes a line break, as the browser has it.
      const text = key === "Enter" ? "\r" : undefined;
      await Promise.all(Array.from({ length: times }, () => send(key, key, named[key], text)));
    },
    get count() {
      return count;
    },
  };
}
