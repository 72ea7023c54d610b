/** Our settings inside the workbook: one custom XML part, the same that files have. */
import { readSettingsXml, settingsNamespace, settingsXml } from "../../workbook/settingsXml";

/** All settings; with none kept yet, none. */
async function allSettings(context: Excel.RequestContext): Promise<{
  readonly part: Excel.CustomXmlPart | null;
  readonly settings: Readonly<Record<string, string>>;
}> {
  const parts = context.workbook.customXmlParts.getByNamespace(settingsNamespace);
  const only = parts.getOnlyItemOrNullObject().load("id");
  const xml = only.getXml();
  parts.load("items/id");
  await context.sync();
  if (!only.isNullObject) return { part: only, settings: readSettingsXml(xml.value) };
  // Two workbooks put into one may bring a part each; the first one counts.
  const [first] = parts.items;
  if (first === undefined) return { part: null, settings: {} };
  const text = first.getXml();
  await context.sync();
  return { part: first, settings: readSettingsXml(text.value) };
}

export async function readSetting(
  context: Excel.RequestContext,
  key: string,
): Promise<string | null> {
  const { settings } = await allSettings(context);
  return Object.hasOwn(settings, key) ? (settings[key] ?? null) : null;
}

export async function writeSetting(
  context: Excel.RequestContext,
  key: string,
  text: string,
): Promise<null> {
  const { part, settings } = await allSettings(context);
  const xml = settingsXml({ ...settings, [key]: text });
  if (part === null) context.workbook.customXmlParts.add(xml);
  else part.setXml(xml);
  await context.sync();
  return null;
}
