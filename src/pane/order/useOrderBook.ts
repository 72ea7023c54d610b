/** The order book that this workbook keeps, read again whenever the workbook changes. */
import { useEffect, useState } from "react";
import { readKeptBook, type OrderBook } from "../../app/orders/orderBook";
import { usePane } from "../state/paneContext";
import { today } from "../../app/today";

/** `null` until it is read. `isWritten` turns when it was changed here. */
export function useOrderBook(isWritten: boolean): OrderBook | null {
  const { workbook, state } = usePane();
  const { takeOff, settings } = state;
  const [book, setBook] = useState<OrderBook | null>(null);
  useEffect(() => {
    let isLeft = false;
    readKeptBook(workbook, settings, today()).then(
      (read) => {
        if (!isLeft && read.ok) setBook(read.value);
      },
      // A host that does not answer now says so where the workbook is read.
      () => undefined,
    );
    return () => {
      isLeft = true;
    };
  }, [workbook, settings, takeOff, isWritten]);
  return book;
}
