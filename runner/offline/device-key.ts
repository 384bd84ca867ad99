import { v7 } from "uuid";
import type { DeviceDatabase, KeyRow } from "./database.ts";

const ALGORITHM = { name: "ECDSA", namedCurve: "P-256" } as const;

const base64url = (bytes: Uint8Array): string => {
  let binary = "";
  for (const byte of bytes) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
};

/**
 * The key with which one person signs on this device; its private half never leaves the browser.
 * Each person has their own, so that whoever is signed in later may deliver their entries and
 * nobody can write under another's name.
 */
export const deviceKey = async (database: DeviceDatabase, person: string): Promise<KeyRow> => {
  const kept = await database.get("keys", person);
  if (kept) return kept;
  const keys = await crypto.subtle.generateKey(ALGORITHM, false, ["sign", "verify"]);
  const row: KeyRow = { person, device: v7(), keys, enrolled: false };
  // Another tab may have been first: whichever is stored is the one both use.
  const transaction = database.transaction("keys", "readwrite");
  const winner = (await transaction.store.get(person)) ?? row;
  await transaction.store.put(winner);
  await transaction.done;
  return winner;
};

/** Uncompressed point of the public half, base64url, as enrolment wants it. */
export const publicKey = async (row: KeyRow): Promise<string> =>
  base64url(new Uint8Array(await crypto.subtle.exportKey("raw", row.keys.publicKey)));

export const markEnrolled = async (database: DeviceDatabase, row: KeyRow): Promise<void> => {
  await database.put("keys", { ...row, enrolled: true });
};

/** ECDSA P-256 over the 32 bytes of an entry's hash, IEEE P1363, base64url. */
export const sign = async (row: KeyRow, hash: Uint8Array): Promise<string> =>
  base64url(
    new Uint8Array(
      await crypto.subtle.sign(
        { name: "ECDSA", hash: "SHA-256" },
        row.keys.privateKey,
        hash as BufferSource,
      ),
    ),
  );
