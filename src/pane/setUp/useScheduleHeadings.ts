/** The headings of the schedule, also where it cannot be read as one. */
import { useEffect, useState } from "react";
import type { Inputs } from "../../app/reading/inputs";
import { likelyHeadings } from "../../tables/likelyHeadings";
import { usePane } from "../state/paneContext";
import { columnChoices, type ColumnChoice } from "./columnChoices";

/** The columns of the first schedule to choose from. */
export function useScheduleHeadings({ readings, source }: Inputs): readonly ColumnChoice[] {
  const { workbook } = usePane();
  const [reading] = readings;
  const [unread, setUnread] = useState<readonly ColumnChoice[]>([]);
  useEffect(() => {
    if (reading !== undefined || source === null) return undefined;
    let isLeft = false;
    workbook.read(source).then(
      (read) => {
        if (isLeft || !read.ok) return;
        const others = likelyHeadings(read.value);
        setUnread(columnChoices({ columns: [], others, firstColumn: read.value.column }));
      },
      // A host that does not answer now says so where the workbook is read.
      () => undefined,
    );
    return () => {
      isLeft = true;
    };
  }, [workbook, reading, source]);
  return reading === undefined ? unread : columnChoices(reading);
}
