/**
 * Drop-downs by keyboard. The grid's own list can be clicked only, and takes the keyboard from the
 * cell under which it opens while somebody types there.
 */
import { ISheetCellDropdownManagerService } from "@univerjs/sheets-ui";
import { ComponentManager } from "@univerjs/ui";
import type { ComponentType } from "react";
import { isTyping } from "./cellEditor";
import type { Engine } from "./engine";
import { gridList, type GridListProps } from "./GridList";

/** The grid looks its list up by this name. */
const listName = "sheets.dropdown.list";

/** `onClose` is called when a list that had the keyboard is gone. Once an engine. */
export function replaceLists(engine: Engine, onClose: () => void): void {
  const dropDowns = engine.injector.get(ISheetCellDropdownManagerService);
  const show = dropDowns.showDropdown.bind(dropDowns);
  dropDowns.showDropdown = (dropDown) =>
    show(
      dropDown.type === "list" && isTyping(engine)
        ? { ...dropDown, props: { ...dropDown.props, showSearch: false } }
        : dropDown,
    );
  const components = engine.injector.get(ComponentManager);
  const gridsOwn = components.get(listName) as ComponentType<GridListProps>;
  components.register(listName, gridList(gridsOwn, onClose));
}
