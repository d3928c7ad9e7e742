import type { PDFDocument, PDFPage, PDFRef } from "@cantoo/pdf-lib";
import { PDFHexString, PDFName, PDFNumber, PDFOperator, PDFOperatorNames } from "@cantoo/pdf-lib";

/** Types of structure elements that are used here (ISO 32000-1, 14.8.4). */
export type Tag = "Document" | "H1" | "H2" | "H3" | "P" | "Table" | "TR" | "TH" | "TD" | "Figure";

interface Attributes {
  /** Of what a heading cell is the heading. */
  readonly scope?: "Row" | "Column";
  /** What is said instead of a drawing. */
  readonly alt?: string;
  /** Where a drawing stands: left, bottom, right, top in points. */
  readonly box?: readonly [number, number, number, number];
}

/** Something that was drawn on a page, by its number there. */
interface Drawn {
  readonly page: PDFPage;
  readonly id: number;
}

/** An element of the structure of a document, which a screen reader follows. */
export class Element {
  readonly kids: (Element | Drawn)[] = [];

  constructor(
    readonly tag: Tag,
    readonly attributes: Attributes = {},
  ) {}

  add(tag: Tag, attributes?: Attributes): Element {
    const kid = new Element(tag, attributes);
    this.kids.push(kid);
    return kid;
  }
}

/**
 * The structure of a tagged PDF (ISO 32000-1, 14.7 and 14.8), which the library does not write by itself: each thing that is drawn
 * belongs to an element, or is decoration that is not read out.
 */
export class Tags {
  readonly root = new Element("Document");
  private readonly counts = new Map<PDFPage, number>();

  /** Draws as a part of an element. */
  as(element: Element, page: PDFPage, draw: () => void): void {
    const id = this.counts.get(page) ?? 0;
    this.counts.set(page, id + 1);
    element.kids.push({ page, id });
    page.pushOperators(
      PDFOperator.of(PDFOperatorNames.BeginMarkedContentSequence, [
        PDFName.of(element.tag),
        `<</MCID ${String(id)}>>`,
      ]),
    );
    draw();
    page.pushOperators(PDFOperator.of(PDFOperatorNames.EndMarkedContent));
  }

  /** Draws what is not read out: lines, page numbers, headings that are repeated. */
  asDecoration(page: PDFPage, draw: () => void): void {
    page.pushOperators(PDFOperator.of(PDFOperatorNames.BeginMarkedContent, [PDFName.of("Artifact")]));
    draw();
    page.pushOperators(PDFOperator.of(PDFOperatorNames.EndMarkedContent));
  }

  /** Puts the structure into the document, once all is drawn. */
  write(document: PDFDocument): void {
    const { context, catalog } = document;
    const root = context.nextRef();
    const owners = new Map<PDFPage, PDFRef[]>(document.getPages().map((page) => [page, []]));
    const put = (element: Element, parent: PDFRef): PDFRef => {
      const { tag, kids, attributes } = element;
      const ref = context.nextRef();
      const pages = new Set(kids.flatMap((kid) => (kid instanceof Element ? [] : [kid.page])));
      const [only] = pages;
      const written = kids.map((kid) => {
        if (kid instanceof Element) return put(kid, ref);
        const own = owners.get(kid.page);
        if (own) own[kid.id] = ref;
        return pages.size === 1
          ? PDFNumber.of(kid.id)
          : context.obj({ Type: "MCR", Pg: kid.page.ref, MCID: kid.id });
      });
      context.assign(
        ref,
        context.obj({
          ...{ Type: "StructElem", S: tag, P: parent, K: written },
          ...(pages.size === 1 && only && { Pg: only.ref }),
          ...(attributes.alt !== undefined && { Alt: PDFHexString.fromText(attributes.alt) }),
          ...(attributes.scope && { A: { O: "Table", Scope: attributes.scope } }),
          ...(attributes.box && { A: { O: "Layout", Placement: "Block", BBox: [...attributes.box] } }),
        }),
      );
      return ref;
    };
    const top = put(this.root, root);
    const numbers = [...owners].flatMap(([page, refs], at) => {
      page.node.set(PDFName.of("StructParents"), PDFNumber.of(at));
      page.node.set(PDFName.of("Tabs"), PDFName.of("S"));
      return [at, context.register(context.obj(refs))];
    });
    context.assign(
      root,
      context.obj({
        ...{ Type: "StructTreeRoot", K: [top], ParentTreeNextKey: owners.size },
        ParentTree: context.register(context.obj({ Nums: numbers })),
      }),
    );
    catalog.set(PDFName.of("StructTreeRoot"), root);
    catalog.set(PDFName.of("MarkInfo"), context.obj({ Marked: true }));
  }
}
