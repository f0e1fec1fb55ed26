/** The little XML that hash lists need: written with care, read without trust. */

export interface XmlElement {
  /** Local name, without the prefix of its namespace. */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  /** Own text, not that of the children. */
  readonly text: string;
}

/** Text for an element or an attribute in double quotes; signs that XML cannot hold are left out. */
export function xmlText(text: string): string {
  return text
    .replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

const NAME = "[A-Za-z_][\\w.:-]*";
const TOKEN = new RegExp(
  `<!--[\\s\\S]*?-->|<\\?[\\s\\S]*?\\?>|<!\\[CDATA\\[([\\s\\S]*?)\\]\\]>|<(/?)(${NAME})((?:\\s+${NAME}\\s*=\\s*(?:"[^"<]*"|'[^'<]*'))*)\\s*(/?)>|([^<]+)|<`,
  "g",
);

/**
 * Root element of a document; `null` when it is not well-formed. Document types are refused, so that nothing outside the
 * text is ever read and no entity can grow.
 */
export function readXml(document: string): XmlElement | null {
  const root: Open = { name: "", attributes: {}, children: [], text: "" };
  const stack: Open[] = [root];
  for (const [token, cdata, closing, name, attributes, empty, text] of document.replace(/^\ufeff/, "").matchAll(TOKEN)) {
    const top = stack.at(-1) as Open;
    if (cdata !== undefined) top.text += cdata;
    else if (text !== undefined) {
      const plain = unescapeXml(text);
      if (plain === null) return null;
      top.text += plain;
    } else if (name !== undefined && closing === "/") {
      if (stack.length < 2 || top.name !== localName(name) || attributes !== "" || empty !== "") return null;
      stack.pop();
    } else if (name !== undefined) {
      const read = readAttributes(attributes ?? "");
      if (read === null || stack.length > 64) return null;
      const element: Open = { name: localName(name), attributes: read, children: [], text: "" };
      top.children.push(element);
      if (empty !== "/") stack.push(element);
    } else if (token === "<") return null;
  }
  const [first] = root.children;
  return stack.length === 1 && root.children.length === 1 && root.text.trim() === "" && first !== undefined ? first : null;
}

interface Open {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: XmlElement[];
  text: string;
}

function readAttributes(text: string): Readonly<Record<string, string>> | null {
  const found: Record<string, string> = Object.create(null);
  for (const [, name = "", double, single] of text.matchAll(/([\w.:-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)) {
    const value = unescapeXml(double ?? single ?? "");
    if (value === null || Object.hasOwn(found, localName(name))) return null;
    found[localName(name)] = value;
  }
  return found;
}

function localName(name: string): string {
  return name.slice(name.indexOf(":") + 1);
}

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

function unescapeXml(text: string): string | null {
  let known = true;
  const plain = text.replace(/&(?:#(\d{1,7})|#x([0-9a-fA-F]{1,6})|(\w+));|&/g, (_, decimal, hex, name) => {
    const code = decimal !== undefined ? Number(decimal) : hex !== undefined ? Number.parseInt(hex, 16) : null;
    const letter = code === null ? ENTITIES[name ?? ""] : code <= 0x10ffff ? String.fromCodePoint(code) : undefined;
    if (letter === undefined) known = false;
    return letter ?? "";
  });
  return known ? plain : null;
}
