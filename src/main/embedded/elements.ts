/** Elements of the page, made with their properties. */

export const button = (text: string, value = ""): HTMLButtonElement =>
  element("button", { type: "button", className: "page-button", textContent: text, value });

export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  properties: Partial<HTMLElementTagNameMap[Tag]>,
  attributes: Readonly<Record<string, string>> = {},
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  Object.assign(made, properties);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}
