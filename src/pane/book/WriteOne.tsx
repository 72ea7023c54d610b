/** A button that writes what is shown as a sheet of ours, and what came of it. */
import type { Drawing } from "../../workbook/drawing";
import { Outcome } from "../sheets/Outcome";
import { useWriteDrawings } from "./useWriteDrawings";
import { WriteButton } from "./WriteButton";

export type WriteOneProps = {
  readonly label: string;
  /** Made when it is to be written. */
  readonly draw: () => Drawing;
};

export function WriteOne({ label, draw }: WriteOneProps) {
  const { writing, write } = useWriteDrawings();
  return (
    <>
      <WriteButton label={label} writing={writing} onWrite={() => write([draw()])} />
      <Outcome writing={writing} />
    </>
  );
}
