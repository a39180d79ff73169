/**
 * What is queued goes to Excel in one request, unless that would be more than Excel on the web takes. The limit
 * there is 5 MB (learn.microsoft.com, "Resource limits and performance optimization for Office Add-ins"); two
 * hundred plans stay below it, so for them nothing is split.
 */
import type { Pieces } from "./sizes";

/** What goes round each request, and the sheet in which it begins, has room besides. */
const MOST_BYTES = 4_700_000;

export class Requests {
  #bytes = 0;
  /** How many requests Excel has answered. */
  sent = 0;

  /** `first` is queued at the beginning of each request. `signal`: whether another is to be sent. */
  constructor(
    private readonly context: Excel.RequestContext,
    private readonly first: () => void = () => undefined,
    private readonly signal?: AbortSignal,
  ) {}

  /** To be asked before something of this size is queued. */
  async makeRoom(bytes: number): Promise<void> {
    if (this.#bytes > 0 && this.#bytes + bytes > MOST_BYTES) await this.send();
    if (this.#bytes === 0) this.first();
    this.#bytes += bytes;
  }

  /** All pieces in their order, with a new request wherever the next would not fit. */
  async queue(pieces: Pieces): Promise<void> {
    for (const bytes of pieces) await this.makeRoom(bytes);
  }

  async send(): Promise<void> {
    this.signal?.throwIfAborted();
    await this.context.sync();
    this.sent++;
    this.#bytes = 0;
  }
}
