/** What the grid says while it calculates long: its own texts have no words for it, and it would show their keys. */
export const progressWords = {
  "sheets-formula": {
    progress: {
      analyzing: "Looking what to calculate",
      calculating: "Calculating",
      "array-analysis": "Looking what to calculate",
      "array-calculation": "Calculating",
      done: "Calculated",
    },
  },
};
