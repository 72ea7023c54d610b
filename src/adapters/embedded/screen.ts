/** The grid on the page: the engine, and all that a person sees and touches of it. */
import {
  DOCS_NORMAL_EDITOR_UNIT_ID_KEY,
  IUniverInstanceService,
  LocaleType,
  mergeLocales,
  ThemeService,
} from "@univerjs/core";
import dataValidationWords from "@univerjs/data-validation/locale/en-US";
import designWords from "@univerjs/design/locale/en-US";
import { UniverDocsPlugin } from "@univerjs/docs";
import { UniverDocsUIPlugin } from "@univerjs/docs-ui";
import docsWords from "@univerjs/docs-ui/locale/en-US";
import { UniverRenderEnginePlugin } from "@univerjs/engine-render";
import sheetsWords from "@univerjs/sheets/locale/en-US";
import sheetsValidationWords from "@univerjs/sheets-data-validation/locale/en-US";
import { UniverSheetsDataValidationUIPlugin } from "@univerjs/sheets-data-validation-ui";
import validationWords from "@univerjs/sheets-data-validation-ui/locale/en-US";
import formulaModelWords from "@univerjs/sheets-formula/locale/en-US";
import { UniverSheetsFormulaUIPlugin } from "@univerjs/sheets-formula-ui";
import formulaWords from "@univerjs/sheets-formula-ui/locale/en-US";
import { UniverSheetsNoteUIPlugin } from "@univerjs/sheets-note-ui";
import noteWords from "@univerjs/sheets-note-ui/locale/en-US";
import { UniverSheetsNumfmtUIPlugin } from "@univerjs/sheets-numfmt-ui";
import numberWords from "@univerjs/sheets-numfmt-ui/locale/en-US";
import { UniverSheetsTableUIPlugin } from "@univerjs/sheets-table-ui";
import tableModelWords from "@univerjs/sheets-table/locale/en-US";
import tableWords from "@univerjs/sheets-table-ui/locale/en-US";
import { UniverSheetsUIPlugin } from "@univerjs/sheets-ui";
import sheetsUiWords from "@univerjs/sheets-ui/locale/en-US";
import { defaultTheme } from "@univerjs/themes";
import { ILayoutService, ThemeSwitcherService, UniverUIPlugin } from "@univerjs/ui";
import uiWords from "@univerjs/ui/locale/en-US";
import "@univerjs/design/lib/index.css";
import "@univerjs/ui/lib/index.css";
import "@univerjs/docs-ui/lib/index.css";
import "@univerjs/sheets-ui/lib/index.css";
import "@univerjs/sheets-formula-ui/lib/index.css";
import "@univerjs/sheets-numfmt-ui/lib/index.css";
import "@univerjs/sheets-table-ui/lib/index.css";
import "@univerjs/sheets-data-validation-ui/lib/index.css";
import "@univerjs/sheets-note-ui/lib/index.css";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import { embeddedWorkbook, type EmbeddedWorkbook } from "./embeddedWorkbook";
import { openGridWorkbook, startEngine, type Engine, type PluginChoice } from "./engine";
import { finishTyping } from "./cellEditor";
import { bringIntoView, keepInView } from "./cellsInView";
import { keepFormulaBar } from "./formulaBar";
import { nameGridControls } from "./gridControls";
import { listenToGridKeys } from "./gridKeys";
import { replaceLists } from "./gridLists";
import { skipChecksOfWhatIsGone } from "./lateChecks";
import { markNoneOfOpenLists } from "./openLists";
import { keepPastedText } from "./pasting";
import { fitFreeze } from "./shownFreeze";
import { AdoptedThemeStyles } from "./themeStyles";
import { functionFaults } from "./functionFaults";
import { recalculateFunctions } from "./recalculating";
import { watchErrorReasons, type OnReason } from "./errorReasons";
import { registerFunctions, type GridFunction } from "./worksheetFunctions";

/** The grid as it stands on the page. */
export type GridScreen = {
  readonly engine: Engine;
  readonly workbook: EmbeddedWorkbook;
  readonly setDark: (dark: boolean) => void;
  /** Works out anew every cell that uses one of the functions. */
  readonly recalculate: () => void;
  /** Gives the keyboard to the grid. */
  readonly focus: () => void;
  /** Puts into its cell what is half typed; nothing where no cell is typed into. */
  readonly finishTyping: () => void;
  readonly dispose: () => void;
};

export type ScreenOptions = {
  readonly start: WorkbookSnapshot;
  readonly functions: readonly GridFunction[];
  readonly dark: boolean;
  /** Hears why the selected cell shows an error of a function, or `null` where it does not. */
  readonly onReason?: OnReason;
};

/** Puts the grid into `container`, which it fills, with `start` open in it. */
export function openScreen(
  container: HTMLElement,
  { start, functions, dark, onReason }: ScreenOptions,
): GridScreen {
  const engine = startEngine({
    before: [
      [UniverDocsPlugin],
      [UniverRenderEnginePlugin],
      [
        UniverUIPlugin,
        {
          container,
          header: true,
          toolbar: true,
          ribbonType: "simple",
          footer: true,
          disableAutoFocus: true,
          override: [[ThemeSwitcherService, { useClass: AdoptedThemeStyles }]],
        },
      ],
      [UniverDocsUIPlugin],
    ],
    after: sheetScreens,
    config: {
      theme: defaultTheme,
      darkMode: dark,
      locales: { [LocaleType.EN_US]: words },
    },
  });
  const faults = functionFaults(engine);
  registerFunctions(engine, functions, faults);
  const workbook = embeddedWorkbook(engine, start, {
    scrollTo: (row, column) => bringIntoView(engine, row, column),
  });
  markNoneOfOpenLists(engine);
  replaceLists(engine, () => giveKeyboard(engine));
  listenToGridKeys(engine, container, (sheet, cell) => void workbook.goTo({ sheet, ...cell }));
  nameGridControls(engine, container);
  keepFormulaBar(engine, container);
  keepPastedText(engine);
  keepInView(engine);
  fitFreeze(engine, container);
  skipChecksOfWhatIsGone(engine);
  if (onReason !== undefined) watchErrorReasons(engine, faults, onReason);
  return {
    engine,
    workbook,
    setDark: (next) => engine.injector.get(ThemeService).setDarkMode(next),
    recalculate: () => recalculateFunctions(engine, functions),
    focus: () => giveKeyboard(engine),
    finishTyping: () => finishTyping(engine),
    dispose: () => engine.univer.dispose(),
  };
}

/**
 * The grid gives the keyboard to the editor it used last. Without the cells' own made that one, what
 * is typed before the first click goes nowhere.
 */
function giveKeyboard(engine: Engine): void {
  const instances = engine.injector.get(IUniverInstanceService);
  if (instances.getUnit(DOCS_NORMAL_EDITOR_UNIT_ID_KEY) !== null) {
    instances.setCurrentUnitForType(DOCS_NORMAL_EDITOR_UNIT_ID_KEY);
  }
  instances.focusUnit(openGridWorkbook(engine).getUnitId());
  engine.injector.get(ILayoutService).focus();
}

const sheetScreens: readonly PluginChoice[] = [
  [UniverSheetsUIPlugin, { formulaBar: true }],
  [UniverSheetsNumfmtUIPlugin],
  [UniverSheetsFormulaUIPlugin],
  [UniverSheetsTableUIPlugin],
  [UniverSheetsDataValidationUIPlugin],
  [UniverSheetsNoteUIPlugin],
];

const words = mergeLocales(
  designWords,
  uiWords,
  docsWords,
  sheetsWords,
  sheetsUiWords,
  formulaModelWords,
  formulaWords,
  numberWords,
  tableModelWords,
  tableWords,
  dataValidationWords,
  sheetsValidationWords,
  validationWords,
  noteWords,
);
