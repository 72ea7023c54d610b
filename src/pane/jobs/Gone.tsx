/** What is shown where something was open that the workbook no longer has. */
import { Notice } from "../parts/Notice";
import { BackButton } from "./BackButton";

export function Gone({ what, onBack }: { readonly what: string; readonly onBack: () => void }) {
  return (
    <>
      <BackButton to="Back" onBack={onBack} />
      <Notice level="note">{what} is no longer in the schedule.</Notice>
    </>
  );
}
