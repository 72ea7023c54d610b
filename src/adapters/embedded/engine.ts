/**
 * The grid's engine without a screen: its model, formulas, tables, notes and drop-downs. The browser
 * adds the screen on top (`screen.ts`); tests run this part alone.
 */
import {
  ICommandService,
  IUniverInstanceService,
  LocaleType,
  LogLevel,
  Univer,
  UniverInstanceType,
  type Injector,
  type IUniverConfig,
  type PluginCtor,
  type Workbook as GridWorkbook,
} from "@univerjs/core";
import { UniverDataValidationPlugin } from "@univerjs/data-validation";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { UniverSheetsNotePlugin } from "@univerjs/sheets-note";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import { UniverSheetsTablePlugin } from "@univerjs/sheets-table";
import { followCalculation, type Calculation } from "./calculating";
import { DressCellsMutation } from "./dressCells";
import { followCells, SetRecordMutation } from "./records";

export type Engine = {
  readonly univer: Univer;
  readonly injector: Injector;
  readonly commands: ICommandService;
  readonly calculation: Calculation;
};

/** A plugin and its options. */
export type PluginChoice = readonly [plugin: PluginCtor, options?: object];

const modelPlugins: readonly PluginChoice[] = [
  [UniverFormulaEnginePlugin],
  [UniverSheetsPlugin],
  [UniverSheetsFormulaPlugin],
  [UniverSheetsNumfmtPlugin],
  [UniverSheetsTablePlugin],
  [UniverDataValidationPlugin],
  [UniverSheetsDataValidationPlugin],
  [UniverSheetsNotePlugin],
];

/** What the screen adds: plugins before and after the model's, its words and its theme. */
export type ScreenParts = {
  readonly before: readonly PluginChoice[];
  readonly after: readonly PluginChoice[];
  readonly config: Partial<IUniverConfig>;
};

const noScreen: ScreenParts = { before: [], after: [], config: { locales: { enUS: {} } } };

/** Starts the engine; it has no workbook until `loadSnapshot` gives it one. */
export function startEngine({ before, after, config }: ScreenParts = noScreen): Engine {
  const univer = new Univer({ locale: LocaleType.EN_US, logLevel: LogLevel.ERROR, ...config });
  for (const [plugin, options] of [...before, ...modelPlugins, ...after]) {
    univer.registerPlugin(plugin, options);
  }
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  commands.registerCommand(SetRecordMutation);
  commands.registerCommand(DressCellsMutation);
  const instances = injector.get(IUniverInstanceService);
  followCells(commands, () => instances.getCurrentUnitOfType(UniverInstanceType.UNIVER_SHEET));
  return { univer, injector, commands, calculation: followCalculation(commands) };
}

/**
 * The workbook that is open.
 *
 * @throws Error before the first workbook is loaded.
 */
export function openGridWorkbook({ injector }: Engine): GridWorkbook {
  const workbook = injector
    .get(IUniverInstanceService)
    .getCurrentUnitOfType<GridWorkbook>(UniverInstanceType.UNIVER_SHEET);
  if (!workbook) throw new Error("No workbook has been loaded into the grid.");
  return workbook;
}
