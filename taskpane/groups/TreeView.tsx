import { Switch, makeStyles, mergeClasses } from "@fluentui/react-components";
import { scaleLinear } from "d3-scale";
import type { ReactNode } from "react";
import { useMemo, useState } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import { Drawing } from "../drawing/Drawing.tsx";
import { DrawingFrame } from "../drawing/DrawingFrame.tsx";
import { fileNameOf } from "../drawing/fileName.ts";
import type { WidthOf } from "../drawing/letters.ts";
import { inRem, letterSize, useWidthOf } from "../drawing/letters.ts";
import { drawn as looks } from "../drawing/looks.ts";
import { meaning } from "../ui/theme.ts";
import { count } from "../ui/words.ts";
import { CutLine } from "./CutLine.tsx";
import type { DrawnTree, TreeEnd, TreeRow } from "./drawTree.ts";
import { drawTree } from "./drawTree.ts";
import type { GroupTree } from "./grouping.ts";
import { groupingWords, shownTimes, sizesOf } from "./words.ts";

const useStyles = makeStyles({
  long: { maxHeight: "560px", overflowY: "auto" },
  sheet: { position: "relative", overflow: "hidden" },
  name: looks.letters,
  base: { fontWeight: 600 },
  line: looks.axis,
  grouped: { fill: "none", stroke: meaning.chalk, strokeWidth: "2px" },
  axis: looks.leader,
  quiet: looks.quietLetters,
  cut: { fill: "none", stroke: meaning.brass, strokeWidth: "2px" },
  number: { ...looks.boldLetters, fill: meaning.chalk },
  choices: { display: "flex", flexWrap: "wrap", columnGap: "8px" },
});

const rowHeight = 20;
const top = 58;
/** Below the words of the scale, above its numbers. */
const flagTop = 18;
const gap = 6;
/** Figures beyond which each group is one row at first, and rows beyond which the smallest groups are left out. */
const manyFigures = 60;
const mostRows = 200;
/** Up to here the tree is drawn at first: what is farther apart shares nothing. */
const nearby = 3;

/** How the figures join, as a tree on its side, with the line at which it is cut into groups. */
export function TreeView(props: {
  readonly chart: Chart;
  readonly tree: GroupTree;
  /** The group of each figure, in the order of the chart. */
  readonly groupOf: Int32Array;
  /** Names of the base figures. */
  readonly bases: ReadonlySet<number>;
  readonly cut: number;
  readonly onCut: (cut: number) => void;
}): ReactNode {
  const styles = useStyles();
  const { chart, tree, groupOf, bases, cut, onCut } = props;
  const { order, merges } = tree;
  const widthOf = useWidthOf();
  const isLarge = order.length > manyFigures;
  const [isFolded, setFolded] = useState(isLarge);
  const [isWhole, setWhole] = useState(false);
  const highest = merges.at(-1)?.height ?? 0;
  const near = nearby * 2 ** Math.max(0, Math.ceil(Math.log2(cut / nearby)));
  const limit = isWhole ? Math.max(highest * 1.02, near) : near;
  const drawn = useMemo(
    () =>
      drawTree({
        merges,
        groupOf: order.map((place) => groupOf[place] ?? 0),
        cut,
        isFolded,
        mostRows,
      }),
    [merges, order, groupOf, cut, isFolded],
  );
  const nameOf = (item: number): string => chart.figures[order[item] ?? -1] ?? "";
  const names = drawn.rows.map(({ items, group }) =>
    items.length > 1 ? `Group ${String(group)}: ${count(items.length, "figure")}` : nameOf(items[0] ?? 0),
  );
  const table = {
    headings: ["Joined", "Tolerances apart", "Figures then"],
    rows: drawn.joins.map(({ ends, height, size }) => [
      ends.map(({ row }) => names[Math.round(row)] ?? "").join(" and "),
      shownTimes(height),
      String(size),
    ]),
  };
  return (
    <>
      <div className={styles.choices}>
        {isLarge && (
          <Switch
            label="One row for each group"
            checked={isFolded}
            onChange={(_, data) => {
              setFolded(data.checked);
            }}
          />
        )}
        {highest > near && (
          <Switch
            label={`Draw beyond ${shownTimes(near)} tolerances`}
            checked={isWhole}
            onChange={(_, data) => {
              setWhole(data.checked);
            }}
          />
        )}
      </div>
      <DrawingFrame
        title="How the figures join"
        description="Each line is a figure. Two lines meet as far to the right as the figures are apart, in tolerances. All that meet left of the cut line are one group."
        fileName={fileNameOf("tree of figures")}
        table={table}
        note={noteOf(drawn, highest, limit)}
      >
        {(width) => (
          <div className={mergeClasses(drawn.rows.length > manyFigures && styles.long)}>
            <div className={styles.sheet} style={{ width: inRem(width) }}>
              <Tree
                width={width}
                drawn={drawn}
                names={names}
                isBase={({ items }) => items.length === 1 && bases.has(order[items[0] ?? -1] ?? -1)}
                sizes={sizesOf(groupOf)}
                cut={cut}
                limit={limit}
                widthOf={widthOf}
              />
              <CutLine
                cut={cut}
                scale={scaleOf(width, longestOf(names, widthOf), limit)}
                limit={limit}
                width={width}
                top={flagTop}
                height={heightOf(drawn)}
                says={groupingWords(groupOf)}
                onCut={onCut}
              />
            </div>
          </div>
        )}
      </DrawingFrame>
    </>
  );
}

function Tree(props: {
  readonly width: number;
  readonly drawn: DrawnTree;
  readonly names: readonly string[];
  readonly isBase: (row: TreeRow) => boolean;
  readonly sizes: readonly number[];
  readonly cut: number;
  readonly limit: number;
  readonly widthOf: WidthOf;
}): ReactNode {
  const styles = useStyles();
  const { width, drawn, names, isBase, sizes, cut, limit, widthOf } = props;
  const { rows, joins, roots } = drawn;
  const longest = longestOf(names, widthOf);
  const x = scaleOf(width, longest, limit);
  const y = (row: number): number => top + rowHeight * (row + 0.5);
  const height = heightOf(drawn);
  const right = x(limit);
  const most = namesWidth(width, longest);
  const isSeen = (end: TreeEnd): boolean => end.height < limit;
  return (
    <Drawing width={width} height={height}>
      <text x={right} y="12" textAnchor="end" className={styles.quiet}>
        tolerances apart
      </text>
      {x.ticks(Math.max(2, Math.floor((right - x(0)) / 40))).map((tick) => (
        <g key={tick}>
          <path className={styles.axis} d={`M${String(x(tick))} ${String(top - 6)}V${String(height)}`} />
          {Math.abs(x(tick) - x(cut)) > letterSize && (
            <text x={x(tick)} y={top - 10} textAnchor="middle" className={styles.quiet}>
              {tick}
            </text>
          )}
        </g>
      ))}
      {joins.map(({ ends, height: at, isGroup }, i) => (
        <g key={i} className={isGroup ? styles.grouped : styles.line}>
          {ends.filter(isSeen).map((end) => (
            <path
              key={end.row}
              d={`M${String(x(end.height))} ${String(y(end.row))}H${String(x(Math.min(at, limit)))}`}
              {...(at > limit && { strokeDasharray: "2 3" })}
            />
          ))}
          {at <= limit && (
            <path d={`M${String(x(at))} ${String(y(ends[0].row))}V${String(y(ends[1].row))}`} />
          )}
        </g>
      ))}
      {roots.filter(isSeen).map(({ row, height: from }) => (
        <path
          key={row}
          className={styles.line}
          d={`M${String(x(from))} ${String(y(row))}H${String(from > 0 ? x(from) + 8 : x(0) + 8)}`}
        />
      ))}
      {rows.map((drawnRow, row) => (
        <text
          key={row}
          x="0"
          y={y(row) + 4}
          className={mergeClasses(
            styles.name,
            isBase(drawnRow) && (sizes[drawnRow.group - 1] ?? 0) > 1 && styles.base,
          )}
        >
          {shortened(names[row] ?? "", drawnRow.items.length > 1 ? Infinity : most, widthOf)}
        </text>
      ))}
      <path className={styles.cut} d={`M${String(x(cut))} ${String(flagTop + 18)}V${String(height)}`} />
      {labelsOf(drawn, sizes).map(({ group, row }) => (
        <text key={group} x={x(cut) + 5} y={y(row) - 3} className={styles.number}>
          {group}
        </text>
      ))}
    </Drawing>
  );
}

/** Where the number of each group of two or more stands: in the middle of its rows. A folded group has it in its name. */
function labelsOf({ rows }: DrawnTree, sizes: readonly number[]): readonly { group: number; row: number }[] {
  const places = new Map<number, number[]>();
  rows.forEach(({ items, group }, row) => {
    if (items.length === 1 && (sizes[group - 1] ?? 0) > 1)
      places.set(group, [...(places.get(group) ?? []), row]);
  });
  return [...places].map(([group, list]) => ({ group, row: ((list[0] ?? 0) + (list.at(-1) ?? 0)) / 2 }));
}

function heightOf({ rows }: DrawnTree): number {
  return top + rows.length * rowHeight + gap;
}

function scaleOf(width: number, longest: number, limit: number) {
  return scaleLinear([0, limit], [namesWidth(width, longest) + gap, width - 16]);
}

function longestOf(names: readonly string[], widthOf: WidthOf): number {
  return names.reduce((most, name) => Math.max(most, widthOf(name)), 0);
}

/** As wide as the longest name, but no more than leaves room for the tree. */
function namesWidth(width: number, longest: number): number {
  return Math.min(longest, Math.max(112, width * 0.35));
}

/** @param most its width, in units of a drawing */
function shortened(name: string, most: number, widthOf: WidthOf): string {
  if (widthOf(name) <= most) return name;
  const letters = [...name];
  while (letters.length > 1 && widthOf(`${letters.join("")}…`) > most) letters.pop();
  return `${letters.join("")}…`;
}

function noteOf({ leftOut, rows }: DrawnTree, highest: number, limit: number): string | undefined {
  const notes = [
    ...(rows.some(({ items }) => items.length > 1)
      ? ["Each group is one row."]
      : ["The base figure of each group is bold."]),
    ...(highest > limit
      ? [`Dashed lines join farther right than ${shownTimes(limit)} tolerances and end at the edge.`]
      : []),
    ...(leftOut > 0
      ? [`This is a part: ${count(leftOut, "figure")} of the smallest groups are not drawn.`]
      : []),
  ];
  return notes.length > 0 ? notes.join(" ") : undefined;
}
