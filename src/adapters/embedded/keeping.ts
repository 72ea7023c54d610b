/** Keeps the workbook in the browser between visits: one record in IndexedDB, on this machine only. */
import type { WorkbookSnapshot } from "../../workbook/snapshot";

export type KeptWorkbook = {
  /** `null` where nothing is kept. */
  readonly read: () => Promise<WorkbookSnapshot | null>;
  readonly keep: (snapshot: WorkbookSnapshot) => Promise<void>;
  readonly forget: () => Promise<void>;
};

const storeName = "workbook";
const key = "current";

/**
 * Opens the place where the workbook is kept.
 *
 * @throws DOMException (rejects) where the browser has no such place or refuses it, as some do in
 * private windows.
 */
export async function openKept(databaseName: string): Promise<KeptWorkbook> {
  const database = await opened(databaseName);
  const store = (mode: IDBTransactionMode): IDBObjectStore =>
    database.transaction(storeName, mode).objectStore(storeName);
  return {
    read: async () => {
      const found: unknown = await answered(store("readonly").get(key));
      return isSnapshot(found) ? found : null;
    },
    keep: async (snapshot) => {
      await answered(store("readwrite").put(snapshot, key));
    },
    forget: async () => {
      await answered(store("readwrite").delete(key));
    },
  };
}

/** Only we write there, but perhaps another version of us did. */
const isSnapshot = (found: unknown): found is WorkbookSnapshot =>
  typeof found === "object" &&
  found !== null &&
  "sheets" in found &&
  Array.isArray(found.sheets) &&
  found.sheets.length > 0 &&
  "styles" in found &&
  Array.isArray(found.styles) &&
  "settings" in found;

const opened = (name: string): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(storeName);
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(faultOf(request));
    request.onblocked = () => reject(new Error("Another page holds an older store open."));
  });

const answered = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(faultOf(request));
  });

const faultOf = (request: IDBRequest): Error =>
  request.error ?? new Error("The browser's store gave no reason.");
