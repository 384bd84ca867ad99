import { type EnrolDevice, problem } from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readDevice } from "./read-register.ts";
import { Refusal } from "./refusal.ts";
import { publicKeyOf } from "./verify-signature.ts";

/** Enrols a device's key for the signed-in person; the same again changes nothing. */
export async function enrolDevice(ctx: Context, by: Session, given: EnrolDevice): Promise<void> {
  if (publicKeyOf(given.key) === null)
    throw new Refusal("invalid", "not-a-key", [problem("/key", "not-a-key")]);
  const known = await readDevice(ctx, given.device);
  if (known) {
    if (known.key === given.key && known.person === by.person) return;
    throw new Refusal("conflict", "device-enrolled-otherwise", [
      problem("/device", "device-enrolled-otherwise"),
    ]);
  }
  await appendNow(ctx, by, {
    kind: "device-enrolled",
    asset: null,
    body: { device: given.device, person: by.person, key: given.key, label: given.label },
  });
}
