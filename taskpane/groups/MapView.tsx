import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { scaleLinear } from "d3-scale";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { ComparedColumn } from "../../addin/similarity/columns.ts";
import type { FigureMap, MapAxis, MapPoint } from "../../addin/similarity/map/figureMap.ts";
import { Choice } from "../ui/Choice.tsx";
import { Drawing } from "../drawing/Drawing.tsx";
import { DrawingFrame } from "../drawing/DrawingFrame.tsx";
import { fileNameOf } from "../drawing/fileName.ts";
import { letterSize, useWidthOf } from "../drawing/letters.ts";
import { drawn } from "../drawing/looks.ts";
import { meaning } from "../ui/theme.ts";
import { count } from "../ui/words.ts";
import type { Clump, Spot } from "./clumps.ts";
import { clumps } from "./clumps.ts";
import type { NearMap } from "./nearMap.ts";
import { placeLabels, withRoom } from "./placeLabels.ts";
import { someFigures } from "./someFigures.ts";
import type { JobAnswer } from "../work/job.ts";
import { useJob } from "../work/useJob.ts";
import { shownTimes, sizesOf, tolerancesWords } from "./words.ts";
import { WorkingWords } from "../work/Working.tsx";

const useStyles = makeStyles({
  axis: drawn.leader,
  quiet: drawn.quietLetters,
  label: drawn.letters,
  number: { ...drawn.boldLetters, fill: tokens.colorNeutralBackground1 },
  mark: { strokeWidth: "1px", stroke: tokens.colorNeutralBackground1 },
  alone: { fill: tokens.colorNeutralBackground1, stroke: tokens.colorNeutralForeground3, strokeWidth: "1px" },
  estimated: { fill: "none", stroke: tokens.colorNeutralForeground2, strokeDasharray: "2 2" },
  text: { margin: 0, overflowWrap: "anywhere" },
  chalk: { fill: meaning.chalk },
  leaf: { fill: meaning.leaf },
  brass: { fill: meaning.brass },
  graphite: { fill: tokens.colorNeutralForeground3 },
});

const tones = ["chalk", "leaf", "brass", "graphite"] as const;
const margin = 20;
const foot = 16;
const radius = 9;
const small = 4;
/** How much farther corners reach than a circle, and how far outside a dashed ring is. */
const corner = 1.2;
const ring = 3;

/** More points than this are not drawn, but base figures only, and of those no more than this. */
const mostPoints = 300;
const mostBases = 60;

/** A share of the differences that counts for nothing. */
const leastShare = 0.005;
const leastRise = 200;
const mostStretch = 10;

interface Shown extends Spot, MapPoint {}

/** The figures as points: those that are alike lie close together. */
export function MapView(props: {
  readonly chart: Chart;
  readonly columns: readonly ComparedColumn[];
  readonly groupOf: Int32Array;
  readonly bases: ReadonlySet<number>;
}): ReactNode {
  const styles = useStyles();
  const { chart, columns, groupOf, bases } = props;
  const [wanted, setWanted] = useState("");
  const sizes = sizesOf(groupOf);
  const groups = sizes.flatMap((size, i) => (size > 1 ? [String(i + 1)] : []));
  const group = groups.includes(wanted) ? Number(wanted) : undefined;
  const places = useMemo(
    () =>
      group === undefined
        ? undefined
        : [...groupOf].flatMap((each, place) => (each === group ? [place] : [])),
    [group, groupOf],
  );
  const job = useMemo(
    () => ({
      kind: "map" as const,
      withoutFar: wanted === "",
      ...(places ? someFigures(chart, columns, places) : { chart, columns }),
    }),
    [chart, columns, places, wanted],
  );
  const working = useJob(job, mapIn);
  const map = working.answer?.map;
  const choice = (
    <Choice
      label="On the map"
      value={group === undefined ? (wanted === "all" ? "all" : "") : String(group)}
      options={[
        ["", "Without figures far off"],
        ["all", "All figures"],
        ...groups.map((each) => [each, `Group ${each}, closer to`] as const),
      ]}
      onChoose={setWanted}
    />
  );
  if (!map) {
    return (
      <>
        {choice}
        <WorkingWords
          working={working}
          doing={`Drawing the map of ${count(chart.figures.length, "figure")}`}
        />
      </>
    );
  }
  const every = map.points.map((point) => {
    const place = places?.[point.place] ?? point.place;
    return { ...point, place, group: groupOf[place] ?? 0, isBase: bases.has(place) };
  });
  const shown = partOf(every);
  const [across, up] = map.axes;
  return (
    <>
      {choice}
      <DrawingFrame
        title={group === undefined ? "Map of the figures" : `Map of group ${String(group)}`}
        description={`Figures that are alike lie close together; one step is one tolerance.${axisSentence("To the right", across)}${axisSentence("Up", up)}`}
        fileName={fileNameOf("map of figures", group === undefined ? "" : `group ${String(group)}`)}
        note={noteOf(map, shown, every.length - shown.length)}
        table={{
          headings: ["Figure", "Group", "To the right", "Up", "Readings filled in"],
          rows: shown.map((point) => [
            point.figure,
            (sizes[point.group - 1] ?? 0) > 1 ? String(point.group) : "alone",
            shownTimes(point.x),
            shownTimes(point.y),
            String(point.estimated),
          ]),
        }}
      >
        {(width) => <Scatter width={width} shown={shown} sizes={sizes} isWhole={group === undefined} />}
      </DrawingFrame>
      {working.answer && working.answer.far.length > 0 && (
        <p className={styles.text}>
          Far off and left out: {working.answer.far.join(", ")}. A reading in a wrong unit does that; look at
          them under Check. To see them here, choose “All figures”.
        </p>
      )}
      {map.notes.map((note) => (
        <p key={note} className={styles.text}>
          {note}
        </p>
      ))}
    </>
  );
}

function Scatter(props: {
  readonly width: number;
  readonly shown: readonly Shown[];
  readonly sizes: readonly number[];
  readonly isWhole: boolean;
}): ReactNode {
  const styles = useStyles();
  const { width, shown, sizes, isWhole } = props;
  const widthOf = useWidthOf();
  const { x, y, height, perStep, stretch } = scalesOf(shown, width);
  const spots = shown.map((point) => ({ ...point, x: x(point.x), y: y(point.y) }));
  const inOrder = clumps(spots, isWhole ? radius * 2 : 0)
    .map((clump) => ({ ...clump, isGroup: (sizes[clump.group - 1] ?? 0) > 1 }))
    .sort((a, b) => Number(b.isGroup) - Number(a.isGroup) || a.group - b.group);
  const roomy = withRoom(inOrder, radius * corner);
  // A group whose number would lie over another is a small mark of the same shape and colour, with its number beside it.
  const marks = inOrder.map((mark, i) => {
    const isNumbered = mark.isGroup && roomy[i] === true;
    const label = labelOf(mark);
    return {
      ...mark,
      isNumbered,
      label: mark.isGroup && !isNumbered ? `${label} (${String(mark.group)})` : label,
    };
  });
  const radiusOf = ({ isNumbered }: (typeof marks)[number]): number => (isNumbered ? radius : small);
  const isRinged = ({ spots: under }: (typeof marks)[number]): boolean =>
    under.some(({ estimated }) => estimated > 0);
  // Corners reach farther than the circle, and the ring of what is filled in farther still.
  const reachOf = (mark: (typeof marks)[number]): number =>
    radiusOf(mark) * (mark.isGroup ? corner : 1) + (isRinged(mark) ? ring : 0);
  const labels = placeLabels(
    marks.map((mark) => ({ ...mark, radius: reachOf(mark) })),
    { width, height: height - margin, size: letterSize, widthOf },
  );
  const bar = barOf(perStep, width / 3);
  return (
    <Drawing width={width} height={height + (stretch > 1 ? foot : 0)}>
      <path
        className={styles.axis}
        d={`M0 ${String(y(0))}H${String(width)}M${String(x(0))} 0V${String(height - margin)}`}
      />
      {[...marks].reverse().map((mark, i) => (
        <g key={i}>
          {isRinged(mark) && (
            <circle cx={mark.x} cy={mark.y} r={radiusOf(mark) + ring} className={styles.estimated} />
          )}
          {mark.isGroup ? (
            <>
              <path
                d={shapeOf(mark, radiusOf(mark))}
                className={mergeClasses(
                  styles.mark,
                  styles[tones[(mark.group - 1) % tones.length] ?? "chalk"],
                )}
              />
              {mark.isNumbered && (
                <text x={mark.x} y={mark.y + 4} textAnchor="middle" className={styles.number}>
                  {mark.group}
                </text>
              )}
            </>
          ) : (
            <circle cx={mark.x} cy={mark.y} r={small} className={styles.alone} />
          )}
        </g>
      ))}
      {marks.map(({ label }, i) => {
        const place = labels[i];
        return (
          place && (
            <text key={i} x={place.x} y={place.y} textAnchor={place.anchor} className={styles.label}>
              {label}
            </text>
          )
        );
      })}
      <path
        className={styles.axis}
        d={`M0 ${String(height - 8)}V${String(height - 4)}H${String(bar * perStep)}V${String(height - 8)}`}
      />
      <text x={bar * perStep + 6} y={height - 2} className={styles.quiet}>
        {tolerancesWords(bar)} across
      </text>
      {stretch > 1 && (
        <text x="0" y={height + foot - 4} className={styles.quiet}>
          Up and down is drawn {stretch} times larger.
        </text>
      )}
    </Drawing>
  );
}

/** All points, or, where they would be too many to tell apart, the base figures of the largest groups. */
function partOf(points: readonly Shown[]): readonly Shown[] {
  if (points.length <= mostPoints) return points;
  return points
    .filter(({ isBase }) => isBase)
    .sort((a, b) => a.group - b.group)
    .slice(0, mostBases);
}

function mapIn(answer: JobAnswer): NearMap | undefined {
  return answer.kind === "map" ? answer : undefined;
}

/** Both directions on one scale, or up and down a whole number of times larger where the map would be a mere strip. */
function scalesOf(points: readonly { readonly x: number; readonly y: number }[], width: number) {
  const [left, right] = ends(points.map(({ x }) => x));
  const [bottom, top] = ends(points.map(({ y }) => y));
  const perStep = (width - 2 * margin) / Math.max(right - left, top - bottom);
  const rise = (top - bottom) * perStep;
  const stretch = Math.min(mostStretch, Math.max(1, Math.floor(leastRise / rise)));
  const indent = (width - 2 * margin - (right - left) * perStep) / 2;
  const drawn = rise * stretch + 2 * margin;
  return {
    x: scaleLinear([left, right], [margin + indent, width - margin - indent]),
    y: scaleLinear([bottom, top], [drawn - margin, margin]),
    height: drawn + margin,
    perStep,
    stretch,
  };
}

/** Least and greatest, the middle 0 included, never the same. */
function ends(values: readonly number[]): readonly [number, number] {
  const least = values.reduce((a, b) => Math.min(a, b), 0);
  const greatest = values.reduce((a, b) => Math.max(a, b), 0);
  return greatest - least < 1 ? [least - 0.5, greatest + 0.5] : [least, greatest];
}

/** A round number of tolerances that fits into some room. */
function barOf(perStep: number, room: number): number {
  const most = room / perStep;
  const power = 10 ** Math.floor(Math.log10(most));
  return power * ([5, 2].find((step) => step * power <= most) ?? 1);
}

/** Circle, square, diamond and hexagon in turn, so that groups differ in shape as well as in colour. */
function shapeOf({ group, x, y }: Pick<Spot, "group" | "x" | "y">, radius: number): string {
  const turn = Math.floor((group - 1) / tones.length) % 4;
  if (turn === 0) {
    return `M${String(x - radius)} ${String(y)}a${String(radius)} ${String(radius)} 0 1 0 ${String(2 * radius)} 0a${String(radius)} ${String(radius)} 0 1 0 ${String(-2 * radius)} 0Z`;
  }
  const corners = turn === 3 ? 6 : 4;
  const first = turn === 1 ? Math.PI / 4 : 0;
  const points = Array.from({ length: corners }, (_, i) => {
    const angle = first + (i * 2 * Math.PI) / corners;
    return `${String(x + radius * corner * Math.cos(angle))} ${String(y + radius * corner * Math.sin(angle))}`;
  });
  return `M${points.join("L")}Z`;
}

function labelOf({ spots }: Clump<Shown>): string {
  const [first, ...others] = spots;
  return `${first?.figure ?? ""}${others.length > 0 ? ` + ${String(others.length)}` : ""}`;
}

function noteOf(map: FigureMap, shown: readonly Shown[], leftOut: number): string {
  const seen = map.axes[0].share + map.axes[1].share;
  const rest = seen > 0 ? 1 - seen : 0;
  const filled = shown.some(({ estimated }) => estimated > 0);
  return [
    ...(leftOut > 0
      ? [`This is a part: only the base figures of the largest groups, ${count(leftOut, "figure")} left out.`]
      : []),
    "A number is a group; an open point, a figure by itself. Where a name or number finds no room, the table has it.",
    ...(filled ? ["A dashed ring: readings are filled in."] : []),
    rest > leastShare
      ? `${shareWords(rest)} cannot be shown on paper, so figures may be farther apart than they look.`
      : "",
  ]
    .filter((note) => note !== "")
    .join(" ");
}

/** What a direction means; nothing where figures hardly differ in it. */
function axisSentence(direction: string, { words, share }: MapAxis): string {
  return share < leastShare ? "" : ` ${direction}: ${lowered(words)} (${shareWords(share)}).`;
}

function shareWords(share: number): string {
  return `${String(Math.round(share * 100))} % of all differences`;
}

function lowered(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
