/**
 * As much of a page as drawings need: elements that remember what they were given.
 */
export class Drawn {
  readonly attributes = new Map<string, string>();
  readonly children: (Drawn | string)[] = [];
  constructor(readonly tag: string) {}

  setAttribute(name: string, value: string): void {
    this.attributes.set(name, value);
  }
  append(...children: (Drawn | string)[]): void {
    this.children.push(...children);
  }
  /** This one and all within. */
  all(): Drawn[] {
    return [this, ...this.children.flatMap((child) => (typeof child === "string" ? [] : child.all()))];
  }
  text(): string {
    return this.children.map((child) => (typeof child === "string" ? child : child.text())).join("");
  }
  tagged(tag: string): Drawn[] {
    return this.all().filter((each) => each.tag === tag);
  }
  classed(name: string): Drawn[] {
    return this.all().filter((each) => each.attributes.get("class")?.split(" ").includes(name));
  }
}

Object.assign(globalThis, {
  document: {
    createElement: (tag: string) => new Drawn(tag),
    createElementNS: (_: string, tag: string) => new Drawn(tag),
  },
});

export const drawn = (figure: HTMLElement) => figure as unknown as Drawn;
