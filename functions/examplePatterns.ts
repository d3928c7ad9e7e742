/** Invented patterns that the examples of the reference use under the name Patterns[#All]; lengths in mm. */
export const examplePatterns = [
  ["Pattern", "Title", "Garment class", "Opens", "Opening length", "Neck opening", "Bust", "Waist", "Hip"],
  ["P1", "Meadow skirt", "Flared skirt", "back", 30, "", "", 104, 200],
  ["P2", "Harbour skirt", "Fitted skirt", "none", "", "", "", 104, 149],
  ["P3", "Fireside gown", "Dress", "full length", "", "", 213, 165, 230],
] as const;
