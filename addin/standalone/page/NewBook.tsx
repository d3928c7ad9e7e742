import type { ReactNode } from "react";
import { useId, useState } from "react";
import type { LengthUnit } from "../../measures/units.ts";
import { longestName } from "../storage/books.ts";

const units: readonly (readonly [LengthUnit, string])[] = [
  ["mm", "millimetres"],
  ["cm", "centimetres"],
  ["in", "inches"],
];

/** Asks how an empty book is to be called, and in which unit its lengths are. */
export function NewBook(props: {
  readonly begin: (name: string, unit: LengthUnit) => void;
  readonly cancel: () => void;
}): ReactNode {
  const id = useId();
  const [name, setName] = useState("My chart");
  const [unit, setUnit] = useState<LengthUnit>("mm");
  return (
    <form
      className="ask"
      aria-label="New book"
      onSubmit={(event) => {
        event.preventDefault();
        props.begin(name, unit);
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        props.cancel();
      }}
    >
      <p className="quiet">
        An empty book to write your own figures and patterns into, with all headings and nothing invented. The
        book that is open stays among your books.
      </p>
      <label htmlFor={`${id}name`}>Name</label>
      <input
        id={`${id}name`}
        ref={selectAll}
        value={name}
        maxLength={longestName}
        onChange={(event) => {
          setName(event.target.value);
        }}
      />
      <label htmlFor={`${id}unit`}>You measure in</label>
      <select
        id={`${id}unit`}
        value={unit}
        onChange={(event) => {
          setUnit(units.find(([each]) => each === event.target.value)?.[0] ?? "mm");
        }}
      >
        {units.map(([each, words]) => (
          <option key={each} value={each}>
            {words}
          </option>
        ))}
      </select>
      <div className="actions">
        <button type="submit">Begin this book</button>
        <button type="button" onClick={props.cancel}>
          Cancel
        </button>
      </div>
    </form>
  );
}

function selectAll(field: HTMLInputElement | null): void {
  field?.select();
}
