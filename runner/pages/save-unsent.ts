import type { DeviceDatabase, Draft } from "../offline/database.ts";
import { writeUnsent } from "../offline/unsent-file.ts";

/** Gives unsent work out as a file. `also`: a draft that the device could not keep. */
export const saveUnsent = async (
  database: DeviceDatabase,
  now: number,
  also?: Draft,
): Promise<void> => {
  const url = URL.createObjectURL(await writeUnsent(database, now, also));
  const link = document.createElement("a");
  link.href = url;
  link.download = `roundbook-unsent-${new Date(now).toISOString().slice(0, 10)}.json`;
  link.click();
  URL.revokeObjectURL(url);
};
