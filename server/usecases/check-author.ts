import {
  type Entry,
  type EntryFlag,
  type Problem,
  problem,
  type SignedEntry,
} from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import type { Db } from "../store/db.ts";
import { devices, people } from "../store/schema/register.ts";
import { verifySignature } from "./verify-signature.ts";

/**
 * Who made an entry: the person whose device signed it, whoever delivers it. Authority that has
 * lapsed since flags the entry; a stranger's signature refuses it.
 */
export async function checkAuthor(
  tx: Db,
  signed: SignedEntry,
  entry: Entry,
): Promise<{ problems: readonly Problem[]; flags: readonly EntryFlag[] }> {
  const refuse = (pointer: string, code: string) => ({
    problems: [problem(pointer, code)],
    flags: [],
  });
  const [device] = await tx
    .select({ key: devices.key, person: devices.person, role: people.role })
    .from(devices)
    .leftJoin(people, eq(people.id, devices.person))
    .where(eq(devices.id, entry.device));
  if (device === undefined) return refuse("/entry/device", "device-not-enrolled");
  if (device.person !== entry.author) return refuse("/entry/author", "author-not-of-device");
  if (!verifySignature(device.key, signed.hash, signed.signature))
    return refuse("/signature", "signature-wrong");
  const lapsed = device.role === null || device.role === "auditor";
  return { problems: [], flags: lapsed ? ["authority-lapsed"] : [] };
}
