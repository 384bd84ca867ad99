import { toHex } from "@roundbook/schemas";
import type { DeviceDatabase, EvidenceRow } from "./database.ts";
import { withRoom } from "./room.ts";

const LONGEST_SIDE = 1600;

/**
 * Draws the photo anew, at most 1,600 px on its longer side: smaller to send, and without the
 * location and other metadata that a camera writes into its files.
 */
const redraw = async (photo: Blob): Promise<Blob> => {
  const bitmap = await createImageBitmap(photo);
  const scale = Math.min(1, LONGEST_SIDE / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(bitmap.width * scale);
  canvas.height = Math.round(bitmap.height * scale);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("this browser cannot draw a photo");
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error("this browser cannot keep a photo"))),
      "image/jpeg",
      0.82,
    );
  });
};

/** Keeps a photo under the SHA-256 of its bytes and returns that hash. */
export const keepPhoto = async (
  database: DeviceDatabase,
  photo: Blob,
  now: number,
): Promise<string> => {
  const blob = await redraw(photo);
  const sha256 = toHex(
    new Uint8Array(await crypto.subtle.digest("SHA-256", await blob.arrayBuffer())),
  );
  if (!(await database.getKey("evidence", sha256))) {
    const row = { sha256, blob, sent: false, takenAt: now };
    await withRoom(
      database,
      () => now,
      () => database.put("evidence", row),
    );
  }
  return sha256;
};

export const loadPhoto = async (
  database: DeviceDatabase,
  sha256: string,
): Promise<Blob | undefined> => (await database.get("evidence", sha256))?.blob;

export const unsentEvidence = async (database: DeviceDatabase): Promise<EvidenceRow[]> =>
  (await database.getAll("evidence")).filter((row) => !row.sent);

export const markEvidenceSent = async (database: DeviceDatabase, sha256: string): Promise<void> => {
  const row = await database.get("evidence", sha256);
  if (row) await database.put("evidence", { ...row, sent: true });
};
