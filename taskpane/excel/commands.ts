import type { Errands } from "../shell/errands.ts";
import { commandIds } from "./commandIds.ts";

/**
 * Connects the commands of the manifest. They run in the page of the pane, whether it is shown or not: each leaves an
 * errand for the pane and shows it. Where Excel does not show it (Microsoft, “Show or hide the task pane”: `showAsTaskpane`
 * is ignored for add-ins from the Marketplace), the errand waits until the user opens the pane.
 */
export function connectCommands(errands: Errands): void {
  for (const [kind, id] of Object.entries(commandIds) as [keyof typeof commandIds, string][]) {
    Office.actions.associate(id, (event: Office.AddinCommands.Event) => {
      errands.post(kind);
      // Excel waits for `completed` before it takes the next command.
      void Office.addin.showAsTaskpane().finally(() => {
        event.completed();
      });
    });
  }
}
