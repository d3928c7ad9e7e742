/** First and last + 1 of the rows (or columns) that are drawn. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Rows drawn beyond the edge, so that a quick scroll shows no gap. */
const beyond = 2;

/**
 * The rows of equal height that are in sight, and a few beyond.
 *
 * @param scrolled how far the box is scrolled, in px
 * @param sight length of the box without its fixed headings, in px
 */
export function spanInSight(scrolled: number, sight: number, each: number, count: number): Span {
  const from = Math.min(count, Math.max(0, Math.floor(scrolled / each) - beyond));
  const to = Math.max(from, Math.min(count, Math.ceil((scrolled + sight) / each) + beyond));
  return { from, to };
}

/** The places of a span, and one more that must stay drawn because it has the focus; in order. */
export function placesOf({ from, to }: Span, kept: number): readonly number[] {
  const places = Array.from({ length: to - from }, (_, i) => from + i);
  if (kept >= from && kept < to) return places;
  return kept < from ? [kept, ...places] : [...places, kept];
}

/** The scroll position, as near as can be to the present one, at which a row is wholly in sight. */
export function scrollTo(place: number, scrolled: number, sight: number, each: number): number {
  const start = place * each;
  if (start < scrolled) return start;
  return start + each > scrolled + sight ? Math.max(0, start + each - sight) : scrolled;
}
