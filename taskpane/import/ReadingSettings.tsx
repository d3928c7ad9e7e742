import type { ReactNode } from "react";
import { decimalMarkNames, decimalMarks } from "../../addin/chart/import/decimalMark.ts";
import type { ImportKind } from "../../addin/chart/import/columns.ts";
import { encodingNames, encodings } from "../../addin/chart/import/encoding.ts";
import { delimiterNames, delimiters } from "../../addin/chart/import/rows.ts";
import { cellText } from "../../addin/chart/cell.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import type { Prepared } from "./prepare.ts";
import type { ImportSource, ReadSource } from "./readSource.ts";
import type { ImportSettings } from "./useImport.ts";
import { nouns } from "./nouns.ts";
import { workbookParts } from "./workbookParts.ts";

/** How the file was read, in words, and each decision changeable. A change of layout drops what was chosen by column. */
export function ReadingSettings(props: {
  readonly source: ImportSource;
  readonly read: ReadSource;
  readonly prepared: Prepared;
  readonly settings: ImportSettings;
  readonly change: (settings: Partial<ImportSettings>) => void;
}): ReactNode {
  const { source, read, prepared, settings, change } = props;
  const layout = {
    columns: new Map(),
    headingRow: undefined,
    figureColumn: undefined,
    turned: undefined,
    what: undefined,
  };
  const { rows, numbers } = prepared.laidOut.source;
  const parts = source.kind === "workbook" ? workbookParts(source.content) : [];
  const { one, place } = nouns[prepared.what];
  return (
    <Disclosure title="How it was read" says={inWords(read, prepared, settings)}>
      {parts.length > 0 && (
        <Choice
          label={place === "chart" ? "Take the chart from" : "Take the list from"}
          value={settings.part?.label ?? ""}
          options={parts.map((part) => [part.label, part.label] as const)}
          onChoose={(label) => {
            change({ ...layout, part: parts.find((part) => part.label === label) });
          }}
        />
      )}
      {read.delimiter && (
        <Choice
          label="Between the cells"
          value={read.delimiter}
          options={delimiters.map((d) => [d, delimiterNames[d]] as const)}
          onChoose={(delimiter) => {
            change({ ...layout, delimiter, decimalMark: undefined });
          }}
        />
      )}
      <Choice
        label="Decimal mark"
        hint={
          prepared.decimalMark === undefined
            ? "◆ The file does not tell, or has both. Each reading is read by itself."
            : ""
        }
        value={prepared.decimalMark ?? ""}
        options={[
          ...decimalMarks.map((mark) => [mark, decimalMarkNames[mark]] as const),
          ...(settings.decimalMark ? [] : [["", "Not told by the file"] as const]),
        ]}
        onChoose={(mark) => {
          change({ decimalMark: mark === "" ? undefined : mark });
        }}
      />
      {read.encoding && (
        <Choice
          label="Letters"
          hint="Change this when names show wrong letters."
          value={read.encoding}
          options={encodings.map((e) => [e, encodingNames[e]] as const)}
          onChoose={(encoding) => {
            change({ ...layout, encoding });
          }}
        />
      )}
      <Choice
        label={place === "chart" ? "Figures run" : "Patterns run"}
        value={prepared.turned ? "across" : "down"}
        options={[
          ["down", `Down: one row a ${one}`],
          ["across", `Across: one column a ${one}`],
        ]}
        onChoose={(direction) => {
          change({ ...layout, turned: direction === "across" });
        }}
      />
      {!isAskedOpenly(prepared, settings) && <WhatItHolds what={prepared.what} isSure change={change} />}
      <Choice
        label="Headings are in"
        value={String(prepared.headingRow)}
        options={rows
          .slice(0, Math.max(12, prepared.headingRow + 1))
          .map((row, i) => [
            String(i),
            `${prepared.turned ? "Column" : "Row"} ${String(numbers[i] ?? i + 1)}: ${row.map(cellText).join(" · ").slice(0, 60)}`,
          ])}
        onChoose={(row) => {
          change({ columns: new Map(), figureColumn: undefined, headingRow: Number(row) });
        }}
      />
    </Disclosure>
  );
}

/** True where what the list holds is asked beside the other questions, not among what few change. */
export function isAskedOpenly({ isSure, what }: Prepared, settings: ImportSettings): boolean {
  return !isSure || settings.what !== undefined || what === "patterns";
}

/** Asks whether the list holds figures or patterns. */
export function WhatItHolds(props: {
  readonly what: ImportKind;
  readonly isSure: boolean;
  readonly change: (settings: Partial<ImportSettings>) => void;
}): ReactNode {
  const { what, isSure, change } = props;
  return (
    <Choice
      label="The list holds"
      hint={isSure ? "" : "◆ It could be either. Please check."}
      value={what}
      options={[
        ["figures", "Figures: bodies with their readings"],
        ["patterns", "Patterns: garments that you sell"],
      ]}
      onChoose={(chosen) => {
        change({ what: chosen, columns: new Map(), figureColumn: undefined });
      }}
    />
  );
}

function inWords(read: ReadSource, prepared: Prepared, settings: ImportSettings): string {
  const number = prepared.laidOut.source.numbers[prepared.headingRow] ?? prepared.headingRow + 1;
  return [
    ...(settings.part ? [settings.part.label.replace(/^./, (c) => c.toLowerCase())] : []),
    ...(read.delimiter ? [`${delimiterNames[read.delimiter].toLowerCase()} between cells`] : []),
    prepared.decimalMark === undefined
      ? "decimal mark not known or mixed, each reading by itself"
      : `decimal ${prepared.decimalMark === "," ? "comma" : "point"}`,
    ...(read.encoding ? [encodingNames[read.encoding]] : []),
    `headings in ${prepared.turned ? "column" : "row"} ${String(number)}`,
  ].join(", ");
}
