import { Checkbox, Field, Input, Textarea, makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useId, useMemo } from "react";
import type { Chart } from "../../addin/chart/chart.ts";
import type { PatternTable } from "../../addin/chart/pattern.ts";
import type { ToleranceTable } from "../../addin/chart/tolerances.ts";
import { groupsOf } from "../../addin/similarity/groups.ts";
import type { Publication, PublishedUnit } from "../../addin/publish/publication.ts";
import { languages, publishedUnits, roundings } from "../../addin/publish/publication.ts";
import { wordsOf } from "../../addin/publish/words/wordsOf.ts";
import { Choice } from "../ui/Choice.tsx";
import { Disclosure } from "../ui/Disclosure.tsx";
import { count } from "../ui/words.ts";

const useStyles = makeStyles({
  list: {
    display: "flex",
    flexDirection: "column",
    flexShrink: 0,
    maxHeight: "280px",
    overflowX: "hidden",
    overflowY: "auto",
    overflowWrap: "anywhere",
  },
  text: { margin: 0 },
});

const nowhere = "";

interface SettingsProps {
  readonly chart: Chart;
  readonly patterns: PatternTable | undefined;
  readonly tolerances: ToleranceTable | undefined;
  readonly publication: Publication;
  readonly onChange: (publication: Publication) => void;
}

/** What is published, folded: each part says in one line how it stands. */
export function PublicationSettings(props: SettingsProps): ReactNode {
  const { chart, patterns, tolerances, publication, onChange } = props;
  const set = (part: Partial<Publication>): void => {
    onChange({ ...publication, ...part });
  };
  return (
    <>
      <Heading publication={publication} set={set} />
      <WhichFigures chart={chart} tolerances={tolerances} publication={publication} set={set} />
      <WhichMeasures chart={chart} publication={publication} set={set} />
      <UnitsPart publication={publication} set={set} />
      {patterns && <WhichPatterns patterns={patterns} publication={publication} set={set} />}
      <BuyersPart publication={publication} set={set} />
    </>
  );
}

interface PartProps {
  readonly publication: Publication;
  readonly set: (part: Partial<Publication>) => void;
}

function Heading({ publication, set }: PartProps): ReactNode {
  const { title, maker, date, note } = publication;
  const says = [title, maker, date].filter((text) => text.trim() !== "").join(", ");
  const field = (label: string, key: "title" | "maker" | "date", placeholder: string): ReactNode => (
    <Field label={label}>
      <Input
        value={publication[key]}
        placeholder={placeholder}
        onChange={(_, data) => {
          set({ [key]: data.value });
        }}
      />
    </Field>
  );
  return (
    <Disclosure title="Title and maker" says={says === "" ? "nothing written yet" : says}>
      {field("Title", "title", "Measures and patterns")}
      {field("Maker’s line", "maker", "Your name or workshop")}
      {field("Date", "date", "Today, unless you write one")}
      <Field label="Note under the title">
        <Textarea
          value={note}
          onChange={(_, data) => {
            set({ note: data.value });
          }}
        />
      </Field>
    </Disclosure>
  );
}

function WhichFigures(props: PartProps & Pick<SettingsProps, "chart" | "tolerances">): ReactNode {
  const styles = useStyles();
  const { chart, tolerances, publication, set } = props;
  const { figures, bodies, where } = publication;
  const groups = useMemo(() => namedGroups(chart, tolerances), [chart, tolerances]);
  const columns = chart.attributes.filter(({ values }) => mayGroup(values));
  const named = new Set(where.map(({ heading }) => heading));
  const left = columns.filter(({ heading }) => !named.has(heading));
  const isBody = ({ members }: NamedGroup): boolean => members.some((name) => bodies.includes(name));
  const says = [
    figures.length > 0 ? count(figures.length, "figure") : "",
    bodies.length > 0 ? count(groups.filter(isBody).length, "body", "bodies") : "",
    figures.length + bodies.length + where.length === 0 ? "all" : "",
    ...where.map(({ heading, value }) => `${heading} ${value}`),
  ].filter((text) => text !== "");
  return (
    <Disclosure title="Figures" says={says.join(", ")}>
      {columns
        .filter(({ heading }) => named.has(heading))
        .map(({ heading, values }) => (
          <TickList
            key={heading}
            title={`Only of this ${heading}:`}
            names={values.filter((word) => word !== "")}
            isTicked={(word) => where.some((each) => each.heading === heading && each.value === word)}
            onTick={(word, isOn) => {
              const others = where.filter((each) => each.heading !== heading || each.value !== word);
              set({ where: isOn ? [...others, { heading, value: word }] : others });
            }}
          />
        ))}
      {left.length > 0 && (
        <Choice
          label={named.size === 0 ? "Only those of one kind" : "And of another kind"}
          value={nowhere}
          options={[
            [nowhere, named.size === 0 ? "No, of every kind" : "No other"],
            ...left.map(({ heading }) => [heading, `By ${heading}`] as const),
          ]}
          onChoose={(heading) => {
            const value = left.find((each) => each.heading === heading)?.values.find((word) => word !== "");
            if (value !== undefined) set({ where: [...where, { heading, value }] });
          }}
        />
      )}
      {groups.length > 0 && (
        <TickList
          title="Everybody who shares a body:"
          names={groups.map(({ members: [first = ""] }) => first)}
          nameOf={(first) => groups.find(({ members }) => members[0] === first)?.members.join(", ") ?? first}
          isTicked={(first) => groups.some((group) => group.members[0] === first && isBody(group))}
          onTick={(first, isOn) => {
            const group = groups.find(({ members }) => members[0] === first);
            const others = bodies.filter((name) => group?.members.includes(name) !== true);
            set({ bodies: isOn ? [...others, first] : others });
          }}
        />
      )}
      <TickList
        title="One by one:"
        names={chart.figures}
        isTicked={(name) => figures.includes(name)}
        onTick={(name, isOn) => {
          set({ figures: isOn ? [...figures, name] : figures.filter((each) => each !== name) });
        }}
      />
      <p className={styles.text}>
        Where no body and no figure is ticked, all are published{where.length > 0 ? " of that kind" : ""}.
      </p>
    </Disclosure>
  );
}

interface NamedGroup {
  readonly members: readonly string[];
}

/** The bodies of several figures, as Groups has them; none where the tolerances forbid it, which is said elsewhere. */
function namedGroups(chart: Chart, tolerances: ToleranceTable | undefined): readonly NamedGroup[] {
  try {
    const groups = groupsOf(chart, tolerances);
    return [...new Set(groups)]
      .map((group) => ({ members: chart.figures.filter((_, at) => groups[at] === group) }))
      .filter(({ members }) => members.length > 1);
  } catch {
    return [];
  }
}

/** A column of text sets figures apart when several share a word. */
function mayGroup(values: readonly string[]): boolean {
  const words = new Set(values.filter((word) => word !== ""));
  return words.size > 0 && words.size <= Math.max(1, values.length / 2);
}

function WhichMeasures({ chart, publication, set }: PartProps & { readonly chart: Chart }): ReactNode {
  const { measures } = publication;
  return (
    <Disclosure
      title="Measures"
      says={measures.length === 0 ? "the usual ones" : count(measures.length, "measure")}
    >
      <TickList
        title="None ticked are the usual ones:"
        names={chart.measures.map(({ heading }) => heading)}
        isTicked={(name) => measures.includes(name)}
        onTick={(name, isOn) => {
          const kept = new Set(isOn ? [...measures, name] : measures.filter((each) => each !== name));
          set({
            measures: chart.measures.map(({ heading }) => heading).filter((heading) => kept.has(heading)),
          });
        }}
      />
    </Disclosure>
  );
}

const noSecond = "none";

function UnitsPart({ publication, set }: PartProps): ReactNode {
  const { units, rounding, sharedRows, paper } = publication;
  const [first = "mm", second] = units;
  const names = publishedUnits.map((unit) => [unit, unit] as const);
  return (
    <Disclosure title="Units and rounding" says={`${units.join(" and ")}, ${rounding}`}>
      <Choice
        label="Unit"
        value={first}
        options={names}
        onChoose={(unit) => {
          set({ units: second === undefined || second === unit ? [unit] : [unit, second] });
        }}
      />
      <Choice<PublishedUnit | typeof noSecond>
        label="And beside it"
        value={second ?? noSecond}
        options={[[noSecond, "no other unit"], ...names.filter(([unit]) => unit !== first)]}
        onChoose={(unit) => {
          set({ units: unit === noSecond ? [first] : [first, unit] });
        }}
      />
      <Choice
        label="Lengths in mm and cm"
        value={rounding}
        options={roundings.map((each) => [each, each] as const)}
        onChoose={(each) => {
          set({ rounding: each });
        }}
      />
      <Tick
        label="Show figures that share a body as one row"
        isOn={sharedRows}
        onChange={(isOn) => {
          set({ sharedRows: isOn });
        }}
      />
      <Choice
        label="Paper, for the PDF and for printing"
        value={paper}
        options={(["A4", "Letter"] as const).map((each) => [each, each] as const)}
        onChoose={(each) => {
          set({ paper: each });
        }}
      />
    </Disclosure>
  );
}

function WhichPatterns({
  patterns: { patterns: known },
  publication: { patterns },
  set,
}: PartProps & { readonly patterns: PatternTable }): ReactNode {
  const codes = known.map(({ code }) => code);
  const isNamed = (code: string): boolean => patterns === undefined || patterns.includes(code);
  const says =
    patterns === undefined ? "all" : patterns.length === 0 ? "none" : count(patterns.length, "pattern");
  return (
    <Disclosure title="Patterns" says={says}>
      <TickList
        title="Patterns to name:"
        names={codes}
        nameOf={(code) => [code, known.find((each) => each.code === code)?.title].filter(Boolean).join(" ")}
        isTicked={isNamed}
        onTick={(code, isOn) => {
          const next = codes.filter((each) => (each === code ? isOn : isNamed(each)));
          set({ patterns: next.length === codes.length ? undefined : next });
        }}
      />
    </Disclosure>
  );
}

function BuyersPart({ publication, set }: PartProps): ReactNode {
  const { language, fitPage, flagged, estimated, drawings, showCautions, cautions } = publication;
  const says = [language, fitPage ? "answers for other figures" : "", showCautions ? "" : "no cautions"];
  return (
    <Disclosure title="What buyers read" says={says.filter((text) => text !== "").join(", ")}>
      <Choice
        label="Language"
        value={language}
        options={languages.map((each) => [each, each] as const)}
        onChoose={(each) => {
          set({ language: each });
        }}
      />
      <Tick
        label="Let the page answer for a figure that is not in the chart. It then holds what each garment measures."
        isOn={fitPage}
        onChange={(isOn) => {
          set({ fitPage: isOn });
        }}
      />
      <Tick
        label="Publish readings that Check doubts, with a mark"
        isOn={flagged}
        onChange={(isOn) => {
          set({ flagged: isOn });
        }}
      />
      <Tick
        label="Publish readings that the chart calls estimated, with a mark"
        isOn={estimated}
        onChange={(isOn) => {
          set({ estimated: isOn });
        }}
      />
      <Tick
        label="Drawings: bodies, and where and how measures are taken"
        isOn={drawings}
        onChange={(isOn) => {
          set({ drawings: isOn });
        }}
      />
      <Tick
        label="Cautions for buyers"
        isOn={showCautions}
        onChange={(isOn) => {
          set({ showCautions: isOn });
        }}
      />
      {showCautions && (
        <Field label="The cautions, one a line" hint="Clear the box to go back to the usual ones.">
          <Textarea
            rows={6}
            value={(cautions.length > 0 ? cautions : wordsOf(language).cautions).join("\n")}
            onChange={(_, data) => {
              const lines = data.value.split("\n");
              set({ cautions: lines.every((line) => line.trim() === "") ? [] : lines });
            }}
          />
        </Field>
      )}
    </Disclosure>
  );
}

function Tick(props: {
  readonly label: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
}): ReactNode {
  return (
    <Checkbox
      label={props.label}
      checked={props.isOn}
      onChange={(_, data) => {
        props.onChange(data.checked === true);
      }}
    />
  );
}

function TickList(props: {
  readonly title: string;
  readonly names: readonly string[];
  readonly nameOf?: (name: string) => string;
  readonly isTicked: (name: string) => boolean;
  readonly onTick: (name: string, isOn: boolean) => void;
}): ReactNode {
  const styles = useStyles();
  const id = useId();
  const { title, names, nameOf = (name) => name, isTicked, onTick } = props;
  return (
    <>
      <p id={id} className={styles.text}>
        {title}
      </p>
      <div className={styles.list} role="group" aria-labelledby={id}>
        {[...new Set(names)].map((name) => (
          <Checkbox
            key={name}
            label={nameOf(name)}
            checked={isTicked(name)}
            onChange={(_, data) => {
              onTick(name, data.checked === true);
            }}
          />
        ))}
      </div>
    </>
  );
}
