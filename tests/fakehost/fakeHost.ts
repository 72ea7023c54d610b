/**
 * A host for the real Excel object model: answers its requests from a fake workbook, and fails on
 * demand. Also the person at the screen, who types, renames, copies and closes.
 */
import { parseArea, type Area } from "./areas";
import {
  addSheet,
  cellOf,
  copySheet,
  deleteSheet,
  findSheet,
  moveSheet,
  renameSheet,
  type FakeBook,
  type FakeSheet,
} from "./book";
import { put, putFormula } from "./entry";
import { HostError } from "./hostObject";
import { shiftRows } from "./shiftRows";
import { execute, isCleanup, type Kept, type RequestBody } from "./wire";
import { workbookObject } from "./workbookObject";
import { eventKinds, newWorld, tell, type World } from "./world";

/** What the fake uses of the library, under its private names. */
export type OfficeExtensionModel = {
  readonly CommonUtility: { _doApiNotSupportedCheck: boolean };
  readonly BatchApiHelper: {
    readonly createPropertyObject: (
      kind: unknown,
      parent: object,
      name: string,
      isCollection: boolean,
      flags: number,
    ) => unknown;
  };
  readonly SessionBase: { new (): object; _overrideSession: unknown };
  readonly GenericEventRegistration: {
    readonly getGenericEventRegistration: (id: string) => Registration;
  };
  readonly _testSetRichApiMessageReadyImpl: (ready: () => Promise<void>) => void;
};
type Registration = { readonly _handleRichApiMessage: (message: unknown) => void };

export type Faults = {
  /** The request of this number (the first is 1) is refused before anything of it is done. */
  readonly request?: number;
  /** The action of this number is refused; what its request did before stays done. */
  readonly action?: number;
  /** The request of this number is carried out, and its answer is lost. */
  readonly lostAnswer?: number;
  /** Something that happens just before the request of a number. */
  readonly meanwhile?: { readonly request: number; readonly happens: () => void };
  /** Everything after the fault is refused too. */
  readonly onwards?: boolean;
  /** What the host says; `GeneralException` where absent. */
  readonly code?: string;
};

export type FakeHost = {
  readonly world: World;
  readonly book: FakeBook;
  /** Bytes and actions of each request since the last `failWith`. */
  readonly requests: {
    readonly bytes: number;
    readonly answer: number;
    readonly actions: number;
  }[];
  /** Sets the faults to come and starts counting anew. */
  readonly failWith: (faults: Faults) => void;
  readonly actions: () => number;
  /** How often the whole workbook was calculated on request. */
  readonly calculations: () => number;
  /** From here on the workbook is closed. */
  readonly close: () => void;
  /** A person begins to type into a cell, and leaves it. */
  readonly beginEdit: () => void;
  readonly endEdit: () => void;
  readonly person: Person;
};

export type Person = {
  readonly type: (sheet: string, cell: string, value: string | number | boolean | null) => void;
  readonly typeFormula: (sheet: string, cell: string, formula: string) => void;
  readonly rename: (sheet: string, name: string) => void;
  readonly addSheet: (name: string) => void;
  readonly deleteSheet: (sheet: string) => void;
  /** Copies a sheet behind itself and returns the copy's name. */
  readonly copySheet: (sheet: string) => string;
  readonly move: (sheet: string, position: number) => void;
  readonly insertRows: (sheet: string, before: number, count: number) => void;
  readonly deleteRows: (sheet: string, first: number, count: number) => void;
  readonly select: (sheet: string, range: string) => void;
};

/** 5 MB, which the web host allows for each request and each answer. */
export const payloadLimit = 5 * 1024 * 1024;
/** The request's flag by which the host waits until a cell is no longer being edited. */
const delayForCellEdit = 64;

/** Connects the library's sessions to a fake workbook: `Excel.run` then needs no change. */
export function fakeHost(book: FakeBook, library: OfficeExtensionModel): FakeHost {
  const world = newWorld(book);
  const kept: Kept = new Map();
  const requests: { bytes: number; answer: number; actions: number }[] = [];
  let faults: Faults = {};
  let actions = 0;
  let failed = false;
  let closed = false;
  let editing: { readonly over: Promise<void>; readonly end: () => void } | null = null;
  const registration = (): Registration =>
    library.GenericEventRegistration.getGenericEventRegistration("");

  const refusal = (code: string, ActionIndex = -1): Answer =>
    answer([], [], { Code: code, Message: messages[code] ?? "The host refused.", ActionIndex });

  const respond = async (flags: number, body: RequestBody): Promise<Answer> => {
    // The library lets go of its objects by itself and retries for seconds; that never fails here.
    if (isCleanup(body)) return answerOf(execute(body, workbookObject(world), kept));
    const bytes = byteLength(body);
    const number = requests.push({ bytes, answer: 0, actions: body.Actions.length });
    if (faults.meanwhile?.request === number) faults.meanwhile.happens();
    if (closed) return refusal("RequestAborted");
    if (editing !== null) {
      if ((flags & delayForCellEdit) === 0) return refusal("InvalidOperationInCellEditMode");
      await editing.over;
    }
    if ((failed && faults.onwards === true) || faults.request === number) {
      failed = true;
      return refusal(faults.code ?? "GeneralException");
    }
    if (bytes > payloadLimit) return refusal("RequestPayloadSizeLimitExceeded");
    const result = execute(body, workbookObject(world), kept, () => {
      actions++;
      if (faults.action !== actions) return;
      failed = true;
      throw new HostError(faults.code ?? "GeneralException", "The host refused.");
    });
    deliver();
    if (faults.lostAnswer === number) {
      failed = true;
      return refusal(faults.code ?? "GeneralException");
    }
    const said = answerOf(result);
    const size = byteLength(said);
    requests[number - 1] = { bytes, answer: size, actions: body.Actions.length };
    return size > payloadLimit ? refusal("ResponsePayloadSizeLimitExceeded") : said;
  };

  /** Tells the add-in what happened, a moment later, as hosts do. */
  const deliver = (): void => {
    const entries = world.events.splice(0).map(({ kind, sheetId, address, source }) => ({
      messageCategory: 65_536,
      messageType: eventKinds[kind],
      targetId: "Workbook",
      message: JSON.stringify({
        address,
        source,
        worksheetId: sheetId,
        changeType: "RangeEdited",
      }),
    }));
    if (entries.length === 0) return;
    setTimeout(() => registration()._handleRichApiMessage({ entries }), 0);
  };

  class Session extends library.SessionBase {
    _resolveRequestUrlAndHeaderInfo(): Promise<{ url: string; headers: object }> {
      return Promise.resolve({ url: "fake:", headers: {} });
    }
    _createRequestExecutorOrNull(): object {
      return {
        executeAsync: (_: unknown, flags: number, message: { readonly Body: RequestBody }) =>
          respond(flags, JSON.parse(JSON.stringify(message.Body)) as RequestBody),
      };
    }
    getEventRegistration(): Registration {
      return registration();
    }
  }
  library._testSetRichApiMessageReadyImpl(() => Promise.resolve());
  library.SessionBase._overrideSession = new Session();

  return {
    world,
    book,
    requests,
    failWith: (next) => {
      faults = next;
      failed = false;
      actions = 0;
      requests.length = 0;
    },
    actions: () => actions,
    calculations: () => world.calculations,
    close: () => (closed = true),
    beginEdit: () => {
      const pending: { end: () => void } = { end: () => undefined };
      const over = new Promise<void>((resolve) => (pending.end = resolve));
      editing = { over, end: () => pending.end() };
    },
    endEdit: () => {
      const ended = editing;
      editing = null;
      ended?.end();
    },
    person: personAt(world, deliver),
  };
}

const byteLength = (value: unknown): number =>
  new TextEncoder().encode(JSON.stringify(value)).length;

type Answer = {
  readonly HttpStatusCode: number;
  readonly ErrorCode: string;
  readonly ErrorMessage: string;
  readonly Headers: object;
  readonly Body: {
    readonly Error: unknown;
    readonly Results: readonly unknown[];
    readonly TraceIds: readonly number[];
  };
};

const answer = (
  Results: readonly unknown[],
  TraceIds: readonly number[],
  Error: unknown,
): Answer => ({
  HttpStatusCode: Error === null ? 200 : 400,
  ErrorCode: "",
  ErrorMessage: "",
  Headers: {},
  Body: { Error, Results, TraceIds },
});

const answerOf = ({ results, traceIds, error }: ReturnType<typeof execute>): Answer =>
  answer(results, traceIds, error);

const messages: Readonly<Record<string, string>> = {
  GeneralException: "An internal error has occurred while processing the request.",
  RequestPayloadSizeLimitExceeded: "The request payload size has exceeded the limit.",
  ResponsePayloadSizeLimitExceeded: "The response payload size has exceeded the limit.",
  InvalidOperationInCellEditMode: "Excel is in cell-editing mode.",
  RequestAborted: "The request was aborted during run time.",
  InactiveWorkbook:
    "The operation failed because multiple workbooks are open and the workbook being called by this API has lost focus.",
};

function personAt(world: World, deliver: () => void): Person {
  const { book } = world;
  const sheetOf = (name: string): FakeSheet => {
    const sheet = findSheet(book, name);
    if (sheet === undefined) throw new RangeError(`The fake workbook has no sheet ${name}`);
    return sheet;
  };
  const typed = (sheet: FakeSheet, area: Area): void => {
    tell(world, "changed", sheet, area);
    deliver();
  };
  const wholeRows = { column: 0, columns: 16_384 };
  return {
    type: (name, at, value) => {
      const [sheet, area] = [sheetOf(name), parseArea(at)];
      put(cellOf(sheet, area.row, area.column), value ?? "");
      typed(sheet, area);
    },
    typeFormula: (name, at, formula) => {
      const [sheet, area] = [sheetOf(name), parseArea(at)];
      putFormula(cellOf(sheet, area.row, area.column), formula);
      typed(sheet, area);
    },
    rename: (name, wanted) => {
      const sheet = sheetOf(name);
      renameSheet(book, sheet, wanted);
      tell(world, "renamed", sheet);
      deliver();
    },
    addSheet: (name) => {
      tell(world, "added", addSheet(book, name));
      deliver();
    },
    deleteSheet: (name) => {
      const sheet = sheetOf(name);
      deleteSheet(book, sheet);
      tell(world, "deleted", sheet);
      deliver();
    },
    copySheet: (name) => {
      const sheet = sheetOf(name);
      const copy = copySheet(book, sheet, book.sheets.indexOf(sheet) + 1);
      tell(world, "added", copy);
      deliver();
      return copy.name;
    },
    move: (name, position) => moveSheet(book, sheetOf(name), position),
    insertRows: (name, before, count) => {
      shiftRows(world, sheetOf(name), before, count, wholeRows);
      deliver();
    },
    deleteRows: (name, first, count) => {
      shiftRows(world, sheetOf(name), first, -count, wholeRows);
      deliver();
    },
    select: (name, range) => {
      const sheet = sheetOf(name);
      book.active = sheet;
      book.selection = range.split(",").map(parseArea);
      const [area] = book.selection;
      if (area !== undefined) tell(world, "selectionChanged", sheet, area);
      deliver();
    },
  };
}
