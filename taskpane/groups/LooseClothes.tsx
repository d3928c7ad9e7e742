import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useDoubts } from "../check/useCheck.ts";
import type { Chosen } from "../ui/chosenPlace.ts";
import { placeOfChosen } from "../ui/chosenPlace.ts";
import { Disclosure } from "../ui/Disclosure.tsx";
import { OpenList } from "../ui/OpenList.tsx";
import { Part } from "../ui/Part.tsx";
import { PlaceChoice } from "../ui/PlaceChoice.tsx";
import { WriteBox } from "../shell/WriteBox.tsx";
import { useSession } from "../shell/session.ts";
import { count } from "../ui/words.ts";
import type { FiguresToGroup, GroupsInput } from "./readGroups.ts";
import type { SharedWith, Sharing } from "./sharing.ts";
import { figureAt, sharingDoubts, sharingOf, sharingWords } from "./sharing.ts";
import { planSharing, sharingSheet } from "./writeSharing.ts";
import { planValues } from "./writeSheet.ts";
import { classColumns, tolerancesStarter } from "./toleranceStarter.ts";
import { TwoFigures } from "./TwoFigures.tsx";

const useStyles = makeStyles({
  text: { margin: 0, overflowWrap: "anywhere" },
  quiet: { margin: 0, color: tokens.colorNeutralForeground3 },
  back: { alignSelf: "flex-start" },
});

/** The two figures of which one is looked at beside the other. */
export interface PairInSight {
  readonly figure?: Chosen;
  /** Absent while the list of all others is shown. */
  readonly other?: Chosen;
}

/** Question 2: what one figure shares with the others, and where two of them part. */
export function LooseClothes(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly pair: PairInSight;
  readonly onPair: (pair: PairInSight) => void;
  readonly writing: number;
}): ReactNode {
  const styles = useStyles();
  const { input, figures, pair, onPair, writing } = props;
  const { ask } = useSession();
  const { chart } = figures;
  const names = chart.figures;
  const place = placeOfChosen(names, pair.figure);
  const other = pair.other && placeOfChosen(names, pair.other);
  const chosen = (at: number): Chosen => ({ place: at, name: figureAt(chart, at) });
  return (
    <>
      {other !== undefined && (
        <Button
          className={styles.back}
          onClick={() => {
            onPair({ figure: chosen(place) });
          }}
        >
          Back to all figures
        </Button>
      )}
      <PlaceChoice
        label="Figure"
        names={names}
        place={place}
        onChoose={(at) => {
          onPair({ ...pair, figure: chosen(at) });
        }}
      />
      <Button
        className={styles.back}
        onClick={() => {
          ask("figure", { figure: figureAt(chart, place) });
        }}
      >
        Open its card
      </Button>
      {other === undefined ? (
        <Others
          input={input}
          figures={figures}
          place={place}
          onOpen={(at) => {
            onPair({ figure: chosen(place), other: chosen(at) });
          }}
        />
      ) : (
        <>
          <PlaceChoice
            label="Beside"
            names={names}
            place={other}
            onChoose={(at) => {
              onPair({ figure: chosen(place), other: chosen(at) });
            }}
          />
          <TwoFigures figures={figures} place={place} other={other} />
        </>
      )}
      {place !== other && (
        <WriteBox
          forms={forms}
          plan={(form) =>
            form === "values"
              ? planValues(sharingSheet(figures, place, other), input)
              : planSharing(figures, place, other, input)
          }
          asked={writing}
        />
      )}
    </>
  );
}

const forms = {
  formulas: "As a formula that follows every change",
  values: "As words and numbers that stay as they are",
} as const;

/** All other figures, by what they share. */
function Others(props: {
  readonly input: GroupsInput;
  readonly figures: FiguresToGroup;
  readonly place: number;
  readonly onOpen: (place: number) => void;
}): ReactNode {
  const styles = useStyles();
  const { input, figures, place, onOpen } = props;
  const { book } = useSession();
  const sharing = book.once(sharingOf, figures, place);
  const { body, looser, nothing, classes } = sharing;
  const name = figureAt(figures.chart, place);
  const doubtful = useDoubts(figures.table, figures.chart);
  const inDoubt = doubtful && book.once(sharingDoubts, figures, place, doubtful);
  const list = (label: string, found: readonly SharedWith[]): ReactNode => (
    <FiguresShared
      key={`${label} ${String(place)}`}
      label={label}
      figures={figures}
      sharing={sharing}
      found={found}
      inDoubt={inDoubt}
      onOpen={onOpen}
    />
  );
  if (classes.length === 0) return <AddClasses input={input} figures={figures} />;
  return (
    <>
      <p className={styles.text} aria-live="polite">
        {count(looser.length, "figure")} {looser.length === 1 ? "shares" : "share"} only some clothes with{" "}
        {name}; {body.length} {body.length === 1 ? "shares" : "share"} its body. Choose one to see both over
        each other.
      </p>
      {looser.length > 0 && (
        <Part title="Only some clothes">{list("Figures that share some clothes", looser)}</Part>
      )}
      {body.length > 0 && <Part title="The whole body">{list("Figures that share the body", body)}</Part>}
      {nothing.length > 0 && (
        <Disclosure title="Nothing, as far as is known" says={count(nothing.length, "figure")}>
          {list("Figures that share nothing", nothing)}
        </Disclosure>
      )}
    </>
  );
}

function FiguresShared(props: {
  readonly label: string;
  readonly figures: FiguresToGroup;
  readonly sharing: Sharing;
  readonly found: readonly SharedWith[];
  /** What rests on doubtful readings, by the place of the other figure. */
  readonly inDoubt: ReadonlyMap<number, string> | undefined;
  readonly onOpen: (place: number) => void;
}): ReactNode {
  const { label, figures, sharing, found, inDoubt, onOpen } = props;
  return (
    <OpenList
      label={label}
      items={found}
      keyOf={({ place }) => String(place)}
      rowOf={({ place, classes }) => ({
        name: figureAt(figures.chart, place),
        says: `${String(classes.filter(({ answer }) => answer === "yes").length)} of ${count(classes.length, "kind")}`,
        words: sharingWords(sharing.classes, classes),
        doubt: inDoubt?.get(place),
      })}
      onOpen={({ place }) => {
        onOpen(place);
      }}
    />
  );
}

/** For tolerances without a class of garments: what is missing, and a start. */
function AddClasses(props: { readonly input: GroupsInput; readonly figures: FiguresToGroup }): ReactNode {
  const styles = useStyles();
  const { apply, freshBook, working } = useSession();
  const { input, figures } = props;
  const { chart, tolerancesTable } = figures;
  async function add(): Promise<void> {
    if (tolerancesTable) {
      const data = await freshBook().readTable(tolerancesTable.name);
      await apply("Add classes of garments", classColumns(chart, tolerancesTable, data), {
        kind: "done",
        text: `The table ${tolerancesTable.name} has columns for fitted and loose clothes now. Change their tolerances as you like.`,
      });
      return;
    }
    const taken = { sheets: input.sheets, tables: input.tables.map(({ name }) => name) };
    const { edits, sheet, table } = tolerancesStarter(chart, taken);
    await apply("Add tolerances", edits, {
      kind: "done",
      text: `The tolerances are in the table ${table} on the sheet “${sheet}”. What you change there counts from now on.`,
    });
  }
  return (
    <>
      <p className={styles.text}>
        {tolerancesTable
          ? `The table ${tolerancesTable.name} has no column for a class of garments yet, such as “Loose clothes”: how far each measure may differ for them.`
          : "The workbook has no table of tolerances yet: how far each measure may differ, for the body and for each class of garments."}
      </p>
      <Button className={styles.back} disabledFocusable={working !== undefined} onClick={() => void add()}>
        {tolerancesTable ? "Add columns for fitted and loose clothes" : "Add a table of tolerances"}
      </Button>
      <p className={styles.quiet}>
        The numbers are starting values. Change them, or head columns with classes of your own.
      </p>
    </>
  );
}
