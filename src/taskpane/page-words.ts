/**
 * The page in another language: every text is translated as it is shown, so that whoever writes a text writes it once,
 * in English. What carries translate="no" is left as it is.
 */
import type { Translate } from "../words/translate";

const ATTRIBUTES = ["aria-label", "title", "placeholder", "alt"];

/** A text as it was written, and as it was shown last. */
interface Shown {
  readonly english: string;
  readonly shown: string;
}

export class PageWords {
  #translate: Translate = (text) => text;
  readonly #texts = new WeakMap<Text, Shown>();
  readonly #attributes = new WeakMap<Element, Map<string, Shown>>();

  constructor(private readonly roots: readonly Element[]) {
    const observer = new MutationObserver((records) => {
      for (const { target, addedNodes, attributeName } of records) {
        if (attributeName !== null) this.#attribute(target as Element, attributeName);
        else if (target instanceof Text) this.#text(target);
        else addedNodes.forEach((node) => this.#all(node));
      }
    });
    for (const root of roots) {
      observer.observe(root, {
        subtree: true,
        childList: true,
        characterData: true,
        attributeFilter: ATTRIBUTES,
      });
    }
  }

  /** From now on in this language, and all that is there already. */
  speak(translate: Translate): void {
    this.#translate = translate;
    for (const root of this.roots) this.#all(root);
  }

  #all(node: Node): void {
    if (node instanceof Text) this.#text(node);
    if (!(node instanceof Element) || node.getAttribute("translate") === "no") return;
    for (const name of ATTRIBUTES) this.#attribute(node, name);
    node.childNodes.forEach((child) => this.#all(child));
  }

  #text(text: Text): void {
    if (text.parentElement?.closest('[translate="no"]')) return;
    const { english, shown } = this.#answer(text.data, this.#texts.get(text));
    this.#texts.set(text, { english, shown });
    if (shown !== text.data) text.data = shown;
  }

  #attribute(element: Element, name: string): void {
    const value = element.getAttribute(name);
    if (value === null || element.closest('[translate="no"]')) return;
    const known = this.#attributes.get(element) ?? new Map<string, Shown>();
    const { english, shown } = this.#answer(value, known.get(name));
    this.#attributes.set(element, known.set(name, { english, shown }));
    if (shown !== value) element.setAttribute(name, shown);
  }

  /** What we have shown ourselves is not taken for English. */
  #answer(now: string, before: Shown | undefined): Shown {
    const english = before?.shown === now ? before.english : now;
    return { english, shown: this.#translate(english) };
  }
}
