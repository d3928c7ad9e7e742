/** What the commands of Excel’s ribbon and cell menu are called where both manifests and the pane speak of them. */
export const commandIds = {
  check: "CheckChart",
  newChart: "NewChart",
  explain: "ExplainCell",
} as const;
