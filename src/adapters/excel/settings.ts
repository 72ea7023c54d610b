/** Our settings inside the workbook: custom XML parts, the same that files have. */
import { readSettingsXml, settingsNamespaceOf, settingsXml } from "../../workbook/settingsXml";

/** The part that has the setting, and all that is in it; none where nothing is kept yet. */
async function partOf(
  context: Excel.RequestContext,
  key: string,
): Promise<{
  readonly part: Excel.CustomXmlPart | null;
  readonly settings: Readonly<Record<string, string>>;
}> {
  const parts = context.workbook.customXmlParts.getByNamespace(settingsNamespaceOf(key));
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
  const { settings } = await partOf(context, key);
  return Object.hasOwn(settings, key) ? (settings[key] ?? null) : null;
}

export async function writeSetting(
  context: Excel.RequestContext,
  key: string,
  text: string,
): Promise<null> {
  const { part, settings } = await partOf(context, key);
  const xml = fragment(settingsXml({ ...settings, [key]: text }, settingsNamespaceOf(key)));
  if (part === null) context.workbook.customXmlParts.add(xml);
  else part.setXml(xml);
  await context.sync();
  return null;
}

/** Excel takes a fragment, which has no declaration. (API reference of `CustomXmlPartCollection`, `add`.) */
const fragment = (xml: string): string => xml.replace(/^<\?xml[^>]*\?>\s*/, "");
