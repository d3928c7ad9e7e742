import { ExcelRefusal, type BookSheet } from "./book.ts";

/** What all request contexts of one double share. */
export interface Host {
  /** Minor number of the newest ExcelApi 1.x that is offered. */
  readonly version: number;
  /** True while the user is typing into a cell. */
  editing: boolean;
  /** Every sync, with how much it asked for. */
  readonly syncs: { readonly operations: number; readonly bytes: number }[];
  /** Told after each sync about the sheets that it wrote to. */
  wrote(sheets: ReadonlySet<BookSheet>): void;
  /** Called before each operation, for tests that want one to fail. */
  beforeOperation: ((label: string) => void) | undefined;
  /** Called at the head and at the end of each sync, for tests that want one to fail or somebody else to write. */
  atSync: ((when: "before" | "after", index: number) => void) | undefined;
}

/** Members that came after ExcelApi 1.10, with the set (1.x) that they came in; a test compares it with the typings. */
export const newerMembers: Readonly<Record<string, number>> = {
  "Range.getSpillParentOrNullObject": 12,
  "Table.resize": 13,
  "Worksheet.notes": 18,
  "RunOptions.mergeUndoGroup": 20,
};

/** @throws what Excel says where it does not offer a member: “The API you are trying to use could not be found.” */
export function requireMember(host: Host, member: string): void {
  if (host.version < (newerMembers[member] ?? 0))
    throw new ExcelRefusal("ApiNotFound", `The API you are trying to use could not be found: ${member}.`);
}

const payloadLimit = 5 * 1024 * 1024;

/** Collects operations, and does them only at `sync`, in order, until one is refused. What is done stays done. */
export class Requests {
  private queued: { readonly label: string; readonly run: () => void }[] = [];
  private bytes = 0;
  private answerBytes = 0;
  private written = new Set<BookSheet>();

  constructor(
    readonly host: Host,
    private readonly waitsForEdit: boolean,
    private readonly isUndoGroup = false,
  ) {}

  /**
   * Microsoft, “Undo support with the Excel JavaScript API”: where something in a group cannot be undone, the error
   * `UndoNotSupported` is thrown. `Worksheet.delete` stands in its list of what cannot.
   */
  refuseInUndoGroup(): void {
    if (this.isUndoGroup)
      throw new ExcelRefusal(
        "UndoNotSupported",
        "The JavaScript API request failed due to lack of support for the undo operation.",
      );
  }

  enqueue(label: string, run: () => void, payload?: unknown): void {
    this.queued.push({ label, run });
    if (payload !== undefined) this.bytes += JSON.stringify(payload).length;
  }

  answers(value: unknown): void {
    this.answerBytes += value === undefined ? 0 : JSON.stringify(value).length;
    if (this.answerBytes > payloadLimit) {
      throw new ExcelRefusal("ResponsePayloadSizeLimitExceeded", "The response payload size is too large.");
    }
  }

  writes(sheet: BookSheet): void {
    this.written.add(sheet);
  }

  async sync(): Promise<void> {
    await Promise.resolve();
    const { queued, bytes } = this;
    this.queued = [];
    this.bytes = 0;
    this.answerBytes = 0;
    const index = this.host.syncs.push({ operations: queued.length, bytes }) - 1;
    if (this.host.editing && !this.waitsForEdit && queued.length > 0) {
      throw new ExcelRefusal("InvalidOperationInCellEditMode", "Excel is in cell-editing mode.");
    }
    if (bytes > payloadLimit) {
      throw new ExcelRefusal("RequestPayloadSizeLimitExceeded", "The request payload size is too large.");
    }
    this.host.atSync?.("before", index);
    try {
      for (const { label, run } of queued) {
        this.host.beforeOperation?.(label);
        run();
      }
      this.host.atSync?.("after", index);
    } finally {
      const written = this.written;
      this.written = new Set();
      if (written.size > 0) this.host.wrote(written);
    }
  }
}

/** How each property of an object is read from what it stands for. */
export type Readers<T, P> = { readonly [K in keyof P]: (target: T) => P[K] };

/**
 * A stand-in for an object of Office.js. What it stands for is looked up at `sync`, in the order in which the
 * stand-ins were asked for; a property can be read only after `load` and `sync`.
 */
export class ClientObject<T, P extends object = object> {
  private found: T | undefined;
  private looked = false;
  private readonly loaded: Partial<P> = {};
  private readonly asked = new Set<keyof P>();

  constructor(
    readonly requests: Requests,
    private readonly what: string,
    look: () => T | undefined,
    private readonly readers: Readers<T, P>,
    private readonly orNull = false,
  ) {
    requests.enqueue(`find ${what}`, () => {
      this.found = look();
      this.looked = true;
      if (this.found === undefined && !orNull) {
        throw new ExcelRefusal("ItemNotFound", `The requested resource doesn't exist: ${what}.`);
      }
    });
  }

  get isNullObject(): boolean {
    if (!this.orNull) throw new Error(`isNullObject was read of ${this.what}, which is not “OrNullObject”.`);
    if (!this.looked) throw notSynced(this.what, "isNullObject");
    return this.found === undefined;
  }

  load(names?: string | readonly string[]): this {
    if (names === undefined || names.length === 0) {
      throw new Error(`load() of ${this.what} without names: say which properties are needed.`);
    }
    const list = typeof names === "string" ? names.split(",").map((name) => name.trim()) : names;
    for (const name of list) {
      if (!this.isProperty(name)) throw new ExcelRefusal("InvalidArgument", `${this.what} has no “${name}”.`);
      this.asked.add(name);
      this.requests.enqueue(`load ${name} of ${this.what}`, () => {
        if (this.found !== undefined) this.keep(name, this.found);
      });
    }
    return this;
  }

  /** Read a property as a collection’s `load("items/…")` asked for it. */
  keep<K extends keyof P>(name: K, target: T): void {
    const value = structuredClone(this.readers[name](target));
    this.requests.answers(value);
    this.asked.add(name);
    this.loaded[name] = value;
  }

  isProperty(name: PropertyKey): name is keyof P {
    return Object.hasOwn(this.readers, name);
  }

  protected read<K extends keyof P>(name: K): P[K] {
    if (!this.asked.has(name)) {
      throw new ExcelRefusal(
        "PropertyNotLoaded",
        `The property “${String(name)}” of ${this.what} is not loaded. Call load, then context.sync(), before reading it.`,
      );
    }
    const value = this.loaded[name];
    if (value === undefined) throw notSynced(this.what, String(name));
    return value;
  }

  /** What this stands for; only while operations are done. */
  target(): T {
    if (this.found === undefined) throw new ExcelRefusal("ItemNotFound", `${this.what} does not exist.`);
    return this.found;
  }

  targetOrUndefined(): T | undefined {
    return this.found;
  }

  protected queue(label: string, run: (target: T) => void, payload?: unknown): void {
    this.requests.enqueue(
      `${label} of ${this.what}`,
      () => {
        run(this.target());
      },
      payload,
    );
  }
}

/** A collection whose items come with `load("items/…")`. */
export class ClientCollection<T, P extends object, Item extends ClientObject<T, P>> {
  private list: Item[] | undefined;

  constructor(
    readonly requests: Requests,
    private readonly what: string,
    private readonly targets: () => readonly T[],
    private readonly make: (target: T) => Item,
  ) {}

  get items(): Item[] {
    if (!this.list) throw notSynced(this.what, "items");
    return this.list;
  }

  load(names?: string | readonly string[]): this {
    if (names === undefined || names.length === 0) {
      throw new Error(`load() of ${this.what} without names: say which properties are needed.`);
    }
    const list = (typeof names === "string" ? names.split(",") : names).map((name) => name.trim());
    for (const name of list) {
      if (!name.startsWith("items/")) throw new ExcelRefusal("InvalidArgument", `“${name}” of ${this.what}`);
    }
    this.requests.enqueue(`load items of ${this.what}`, () => {
      const targets = this.targets();
      this.list = targets.map((target) => {
        const item = this.make(target);
        for (const path of list) {
          const name = path.slice("items/".length);
          if (!item.isProperty(name)) throw new ExcelRefusal("InvalidArgument", `“${path}” of ${this.what}`);
          item.keep(name, target);
        }
        return item;
      });
    });
    return this;
  }
}

/** A value that a method gives, readable after `sync`. */
export class ClientResult<V> {
  private answer: { readonly value: V } | undefined;

  constructor(requests: Requests, label: string, read: () => V) {
    requests.enqueue(label, () => {
      const value = structuredClone(read());
      requests.answers(value);
      this.answer = { value };
    });
  }

  get value(): V {
    if (!this.answer) throw notSynced("a result", "value");
    return this.answer.value;
  }
}

function notSynced(what: string, name: string): ExcelRefusal {
  return new ExcelRefusal(
    "ValueNotLoaded",
    `“${name}” of ${what} is asked for, but not there before context.sync().`,
  );
}
