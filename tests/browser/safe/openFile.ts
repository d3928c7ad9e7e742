import type { Page } from "playwright-core";

/** Opens a workbook with the button above the sheet, as a user does. */
export async function openFile(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Open .xlsx" }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
}
