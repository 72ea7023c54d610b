/** What the pane shows only after a first look: fetched behind it, so that the first look comes soon. */
import { lazy, type ComponentType } from "react";

const later = <Props extends object>(load: () => Promise<ComponentType<Props>>) =>
  lazy(async () => ({ default: await load() }));

const loadLines = async () =>
  (await import(/* webpackChunkName: "views" */ "../jobs/JobLines")).JobLines;
const loadReasons = async () =>
  (await import(/* webpackChunkName: "views" */ "../jobs/LineReasons")).LineReasons;
const loadSheets = async () =>
  (await import(/* webpackChunkName: "views" */ "../sheets/SheetsView")).SheetsView;
const loadSetUp = async () =>
  (await import(/* webpackChunkName: "views" */ "../setUp/SetUpView")).SetUpView;
const loadFirstRun = async () =>
  (await import(/* webpackChunkName: "views" */ "../start/FirstRun")).FirstRun;
const loadSelected = async () =>
  (await import(/* webpackChunkName: "views" */ "../jobs/SelectedOpening")).SelectedOpening;
const loadOpening = async () =>
  (await import(/* webpackChunkName: "opening" */ "../opening/OpeningView")).OpeningView;
const loadOrder = async () =>
  (await import(/* webpackChunkName: "order" */ "../order/OrderView")).OrderView;
const loadMargins = async () =>
  (await import(/* webpackChunkName: "margins" */ "../margins/MarginsView")).MarginsView;
const loadChanges = async () =>
  (await import(/* webpackChunkName: "changes" */ "../changes/ChangesView")).ChangesView;
const loadBook = async () =>
  (await import(/* webpackChunkName: "book" */ "../book/BookView")).BookView;

export const JobLines = later(loadLines);
export const LineReasons = later(loadReasons);
export const SheetsView = later(loadSheets);
export const SetUpView = later(loadSetUp);
export const FirstRun = later(loadFirstRun);
export const SelectedOpening = later(loadSelected);
export const OpeningView = later(loadOpening);
export const OrderView = later(loadOrder);
export const MarginsView = later(loadMargins);
export const ChangesView = later(loadChanges);
export const BookView = later(loadBook);

/** Fetches those that are wanted first. What cannot be fetched now is fetched again when it is wanted, and then shows why. */
export const fetchLaterViews = (): Promise<unknown> =>
  Promise.allSettled([loadLines(), loadReasons(), loadSheets(), loadSetUp(), loadFirstRun()]);
