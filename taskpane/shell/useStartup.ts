import { useEffect, useState } from "react";
import { failureText } from "./notice.ts";
import { useSession } from "./session.ts";

/** Whether Measure Book starts with this workbook. */
export interface Startup {
  readonly isOn: boolean | undefined;
  set(on: boolean): Promise<void>;
}

/** Where the program around the pane has it; failures are said, never thrown. */
export function useStartup(): Startup | undefined {
  const { services, say } = useSession();
  const { startup } = services;
  const [isOn, setOn] = useState<boolean>();
  useEffect(() => {
    if (!startup) return undefined;
    let current = true;
    // As Excel has it, not as it was asked to be.
    const read = (): void => {
      startup.isOn().then(
        (on) => {
          if (current) setOn(on);
        },
        () => undefined,
      );
    };
    read();
    const leave = startup.subscribe(read);
    return () => {
      current = false;
      leave();
    };
  }, [startup]);
  if (!startup) return undefined;
  return {
    isOn,
    set: async (on) => {
      try {
        await startup.set(on);
      } catch (error) {
        say({ kind: "failed", text: failureText(error) });
      }
    },
  };
}
