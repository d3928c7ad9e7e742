import type { IWorkbookData } from "@univerjs/core";
import { descriptors } from "../../../functions/all.ts";
import type { WorkbookContent } from "../../workbook/content.ts";
import { openWithoutScreen } from "./withoutScreen.ts";

const longestMs = 30_000;

/** All that a kept workbook holds, calculated, without showing it. */
export async function contentOf(snapshot: IWorkbookData): Promise<WorkbookContent> {
  const { workbook, opened, close } = openWithoutScreen(snapshot, descriptors);
  try {
    await Promise.race([opened, new Promise((resolve) => setTimeout(resolve, longestMs))]);
    return workbook.content();
  } finally {
    close();
  }
}
