import type { ReactNode } from "react";
import { CopyBox } from "./CopyBox.tsx";

/** Ways to keep a page of HTML, see `CopyBox`. */
export function SavePageBox(props: {
  readonly name: string;
  readonly page: string;
  readonly onClose: () => void;
}): ReactNode {
  const { name, page, onClose } = props;
  return (
    <CopyBox
      keep={{
        ...{ file: name, what: "page", text: page, called: `the name ${name}` },
        ...{ content: page, type: "text/html;charset=utf-8" },
      }}
      asked={page}
      advice="The text of the page can be copied in every Excel."
      onClose={onClose}
    />
  );
}
