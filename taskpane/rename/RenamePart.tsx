import type { ReactNode } from "react";
import { lazy, Suspense, useState } from "react";
import { Disclosure } from "../ui/Disclosure.tsx";

const RenameForm = lazy(async () => ({ default: (await import("./RenameForm.tsx")).RenameForm }));

/** Gives a figure or pattern another name, in its table and wherever that name stands. */
export function RenamePart(): ReactNode {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <Disclosure title="Rename a figure or a pattern" says="wherever its name stands" onToggle={setIsOpen}>
      {isOpen && (
        <Suspense fallback="Reading the names …">
          <RenameForm />
        </Suspense>
      )}
    </Disclosure>
  );
}
