/** The cells’ own field for the keyboard: whatever is typed while no other part of the grid is in use goes there. */
export const cellsField = "#__editor___INTERNAL_EDITOR__DOCS_NORMAL";
