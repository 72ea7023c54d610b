/** The cell that is being typed into. */
import { DeviceInputEventType } from "@univerjs/engine-render";
import { IEditorBridgeService, SetCellEditVisibleOperation } from "@univerjs/sheets-ui";
import { openGridWorkbook, type Engine } from "./engine";

export const isTyping = ({ injector }: Engine): boolean =>
  injector.get(IEditorBridgeService).isVisible().visible;

/** Puts into its cell what is typed by now, as Enter does; the selection stays. */
export function finishTyping(engine: Engine): void {
  if (!isTyping(engine)) return;
  engine.commands.syncExecuteCommand(SetCellEditVisibleOperation.id, {
    visible: false,
    eventType: DeviceInputEventType.PointerDown,
    unitId: openGridWorkbook(engine).getUnitId(),
  });
}
