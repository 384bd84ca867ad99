import type { DeviceDatabase, Draft } from "../offline/database.ts";
import { saveDraft } from "../offline/drafts.ts";

const PAUSE_MS = 250;

/**
 * Saves a draft shortly after its last change, and at once when the page is left or hidden. Saves
 * follow one another, so that an older state never overwrites a newer one.
 */
export class DraftKeeper {
  #pending: Draft | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #saving: Promise<void> = Promise.resolve();
  #ended = false;
  readonly #database: DeviceDatabase;

  constructor(database: DeviceDatabase) {
    this.#database = database;
  }

  change(draft: Draft): void {
    if (this.#ended) return;
    this.#pending = draft;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), PAUSE_MS);
  }

  flush(): Promise<void> {
    clearTimeout(this.#timer);
    const draft = this.#pending;
    this.#pending = null;
    if (draft) this.#saving = this.#saving.then(() => saveDraft(this.#database, draft));
    return this.#saving;
  }

  /** Nothing is saved any more: the draft has become an entry. */
  async end(): Promise<void> {
    this.#ended = true;
    clearTimeout(this.#timer);
    this.#pending = null;
    await this.#saving;
  }

  /** Writing the entry failed: changes are kept again. */
  resume(): void {
    this.#ended = false;
  }
}
