import {
  type Answers,
  type BodyOf,
  type Content,
  commitBytes,
  type DEVICE_KINDS,
  type Entry,
  entryBytes,
  type SignedEntry,
  splitAnswerName,
  toHex,
  type WrittenText,
} from "@roundbook/schemas";
import { v7 } from "uuid";
import type { KeyRow } from "./database.ts";
import { sign } from "./device-key.ts";

type DeviceKind = (typeof DEVICE_KINDS)[number];

const sha256 = async (bytes: Uint8Array): Promise<Uint8Array> =>
  new Uint8Array(await crypto.subtle.digest("SHA-256", bytes as BufferSource));

/** Replaces personal text by its salted commitment and gathers what it stands for. */
export class Commitments {
  readonly contents: Content[] = [];

  async of(text: string): Promise<{ commit: string }> {
    const salt = toHex(crypto.getRandomValues(new Uint8Array(16)));
    const commit = toHex(await sha256(commitBytes(salt, text)));
    this.contents.push({ commit, salt, text });
    return { commit };
  }

  async written(text: WrittenText): Promise<{ commit: string }> {
    return typeof text === "string" ? this.of(text) : text;
  }

  /**
   * Answers with every text a person wrote committed: text points, names that signed, notes on
   * absences. What stands on a bottle is no text of a person and stays, so that its result finds it.
   */
  async answers(answers: Answers, textPoints: ReadonlySet<string>): Promise<Answers> {
    const committed: [string, Answers[string]][] = [];
    for (const [name, answer] of Object.entries(answers)) {
      const isText = textPoints.has(splitAnswerName(name).point);
      if (typeof answer === "string" && isText) {
        committed.push([name, await this.of(answer)]);
      } else if (typeof answer === "object" && "signedBy" in answer) {
        committed.push([name, { ...answer, signedBy: await this.written(answer.signedBy) }]);
      } else if (typeof answer === "object" && "absent" in answer && answer.absent.note) {
        const note = await this.written(answer.absent.note);
        committed.push([name, { absent: { ...answer.absent, note } }]);
      } else committed.push([name, answer]);
    }
    return Object.fromEntries(committed);
  }
}

/** What a person did, before it is an entry. */
export type Made = {
  [K in DeviceKind]: { readonly kind: K; readonly body: BodyOf<K> };
}[DeviceKind];

export interface MadeWhere {
  readonly asset: string;
  readonly contents: readonly Content[];
  /** Device clock, milliseconds UTC; null where only the day is known. */
  readonly now: number | null;
  /** ISO date at the site, corrected by the last known offset from the server's clock. */
  readonly civilDate: string;
}

/** Hashes and signs an entry: from here on no member of it may change. */
export const makeEntry = async (
  key: KeyRow,
  made: Made,
  where: MadeWhere,
): Promise<SignedEntry> => {
  const entry = {
    id: v7(),
    ...made,
    asset: where.asset,
    author: key.person,
    device: key.device,
    happenedAt: where.now === null ? null : new Date(where.now).toISOString(),
    civilDate: where.civilDate,
  } satisfies Entry;
  const hash = await sha256(entryBytes(entry));
  return {
    entry,
    hash: toHex(hash),
    signature: await sign(key, hash),
    contents: where.contents,
  };
};
