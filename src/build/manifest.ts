/**
 * The manifest for another address than the one it is written for: the XML is read, its addresses are moved.
 */
import { LOCAL_ORIGIN, moved } from "./origin";

export async function manifestFor(xml: string, origin: string): Promise<string> {
  // an ES module that loads itself asynchronously, so it cannot be required
  const { XmlAttribute, XmlDocument } = await import("libxml2-wasm");
  const document = XmlDocument.fromString(xml);
  try {
    for (const node of document.find("//@*")) {
      if (!(node instanceof XmlAttribute)) continue;
      const address = moved(node.value, LOCAL_ORIGIN, origin);
      // the library reads what it is given as XML, and drops an & that stands alone
      if (address !== node.value) node.value = address.replaceAll("&", "&amp;");
    }
    return document.toString({ format: false });
  } finally {
    document.dispose();
  }
}
