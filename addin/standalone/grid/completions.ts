import type { ISearchItemWithType } from "@univerjs/sheets-formula";
import { IDescriptionService } from "@univerjs/sheets-formula";
import { FunctionType } from "@univerjs/engine-formula";
import { namespace } from "../../../functions/namespace.ts";
import type { GridUnit } from "./gridSheets.ts";
import { tablesOf } from "./gridSheets.ts";

/**
 * Completes more of what is typed than the grid does by itself: columns of a table after its bracket
 * (`Figures[Bu` → `Figures[Bust (mm)]`), and our functions without what stands before their names (`APA` → `FIT.APART`).
 */
export function completeMore(unit: GridUnit): void {
  const descriptions = unit.injector.get(IDescriptionService);
  const search = descriptions.getSearchListByNameFirstLetter.bind(descriptions);
  descriptions.getSearchListByNameFirstLetter = (text) => {
    const typed = text.trim();
    if (typed.includes("[")) return columns(unit, typed);
    const ours = typed === "" || typed.includes(".") ? [] : search(`${namespace}.${typed}`);
    const found = search(typed);
    return [...found, ...ours.filter(({ name }) => found.every((other) => other.name !== name))];
  };
}

/** What may stand in the brackets after the name of a table; those that begin with what is typed come first. */
function columns(unit: GridUnit, typed: string): ISearchItemWithType[] {
  const [, name = "", begun = ""] = /^([^[\]]+)\[([^[\]]*)$/.exec(typed) ?? [];
  const table = tablesOf(unit).find((each) => each.name.toLowerCase() === name.toLowerCase());
  if (!table) return [];
  const sought = begun.toLowerCase();
  const parts = [
    {
      part: "#All",
      help: `The whole table ${table.name}, headings included. Functions of ${namespace} take it so.`,
    },
    // A heading with signs of the notation itself cannot be written in it here.
    ...table.headings
      .filter((heading) => heading !== "" && !/[[\]#']/.test(heading))
      .map((part) => ({ part, help: `A column of the table ${table.name}` })),
  ];
  const at = ({ part }: { part: string }): number => part.toLowerCase().indexOf(sought);
  return parts
    .filter((each) => at(each) >= 0)
    .sort((a, b) => Number(at(a) > 0) - Number(at(b) > 0))
    .map(({ part, help }) => ({
      name: `${table.name}[${part}]`,
      desc: help,
      functionType: FunctionType.Table,
    }));
}
