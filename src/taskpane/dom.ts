/**
 * Elements from data. Text goes in as text, never as markup.
 */
type Attributes = Readonly<Record<string, string | boolean | undefined>>;

export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    made.setAttribute(name, value === true ? "" : value);
  }
  made.append(...children);
  return made;
}

export const button = (label: string, attributes: Attributes = {}) =>
  element("button", { type: "button", ...attributes }, label);
