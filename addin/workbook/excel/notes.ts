import { cellName } from "../address.ts";
import { sameName } from "../names.ts";
import type { CellAddress } from "../port.ts";
import { cellOf } from "./ranges.ts";
import { supports } from "./requests.ts";

type Note = Excel.Note | Excel.Comment;

export interface NotePlace {
  readonly at: CellAddress;
  /** As it was found. */
  readonly text: string | undefined;
  /** Queue what gives the cell that note, or (`undefined`) takes it away. */
  put(text: string | undefined): void;
}

/** The notes of cells; in an Excel that does not offer notes to add-ins, their comments. */
export function findNotes(
  context: Excel.RequestContext,
  cells: readonly CellAddress[],
): Promise<readonly NotePlace[]> {
  if (cells.length === 0) return Promise.resolve([]);
  return supports("1.18") ? notesAt(context, cells) : commentsAt(context, cells);
}

/** Add a note to a cell that has none. */
export function addNote(context: Excel.RequestContext, at: CellAddress, text: string): Note {
  const sheet = context.workbook.worksheets.getItem(at.sheet);
  return supports("1.18")
    ? sheet.notes.add(cellName(at.row, at.column), text)
    : context.workbook.comments.add(cellOf(context, at), text);
}

async function notesAt(
  context: Excel.RequestContext,
  cells: readonly CellAddress[],
): Promise<readonly NotePlace[]> {
  const found = cells.map((at) => {
    const sheet = context.workbook.worksheets.getItem(at.sheet);
    const note = sheet.notes.getItemOrNullObject(cellName(at.row, at.column));
    note.load("content");
    return { at, note };
  });
  await context.sync();
  return found.map(({ at, note }) => place(context, at, note.isNullObject ? undefined : note));
}

async function commentsAt(
  context: Excel.RequestContext,
  cells: readonly CellAddress[],
): Promise<readonly NotePlace[]> {
  const { comments } = context.workbook;
  comments.load("items/content");
  await context.sync();
  const located = comments.items.map((comment) => {
    const location = comment.getLocation();
    location.load(["rowIndex", "columnIndex"]);
    const sheet = location.worksheet;
    sheet.load("name");
    return { comment, location, sheet };
  });
  await context.sync();
  return cells.map((at) => {
    const found = located.find(
      ({ location, sheet }) =>
        location.rowIndex === at.row && location.columnIndex === at.column && sameName(sheet.name, at.sheet),
    );
    return place(context, at, found?.comment);
  });
}

function place(context: Excel.RequestContext, at: CellAddress, found: Note | undefined): NotePlace {
  let note = found;
  return {
    at,
    text: found?.content,
    put: (text) => {
      if (text === undefined) {
        note?.delete();
        note = undefined;
      } else if (note) note.content = text;
      else note = addNote(context, at, text);
    },
  };
}
