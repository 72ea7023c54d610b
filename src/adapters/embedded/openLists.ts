/** Drop-downs that only offer: the grid would mark every cell as wrong that is not on the list. */
import { DataValidationErrorStyle, DataValidationType } from "@univerjs/core";
import { DataValidatorRegistryService } from "@univerjs/data-validation";
import type { Engine } from "./engine";

/** Lets any value stand under a list that does not refuse others. Once an engine, after it has started. */
export function markNoneOfOpenLists({ injector }: Engine): void {
  const list = injector.get(DataValidatorRegistryService).getValidatorItem(DataValidationType.LIST);
  if (list === undefined) throw new Error("The grid has no drop-downs yet.");
  const isOnList = list.isValidType.bind(list);
  list.isValidType = (cell, formula, rule) =>
    rule.errorStyle === DataValidationErrorStyle.STOP
      ? isOnList(cell, formula, rule)
      : Promise.resolve(true);
}
