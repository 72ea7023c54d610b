/**
 * The formula bar keeps the keyboard of those who click into it. The grid opens the cell's own editor
 * at the same time, which takes the keyboard in the next moments, and what is typed would be lost.
 */
import {
  DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY as formulaBar,
  DOCS_NORMAL_EDITOR_UNIT_ID_KEY as cellEditor,
  IUniverInstanceService,
  UniverInstanceType,
} from "@univerjs/core";
import { DocSelectionRenderService } from "@univerjs/docs-ui";
import { IRenderManagerService } from "@univerjs/engine-render";
import { isTyping } from "./cellEditor";
import type { Engine } from "./engine";

/** Gives the keyboard back as often as it is taken. Once an engine. */
export function keepFormulaBar(engine: Engine, container: HTMLElement): void {
  const instances = engine.injector.get(IUniverInstanceService);
  const renders = engine.injector.get(IRenderManagerService);
  container.addEventListener("focusin", ({ target }) => {
    const isTaken = target instanceof HTMLElement && target.id === `__editor_${cellEditor}`;
    const typedInto = instances.getCurrentUnitOfType(UniverInstanceType.UNIVER_DOC);
    if (!isTaken || !isTyping(engine) || typedInto?.getUnitId() !== formulaBar) return;
    renders.getRenderById(formulaBar)?.with(DocSelectionRenderService).focus();
  });
}
