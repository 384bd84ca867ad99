import { useEffect, useMemo, useRef } from "react";
import { keepPhoto, loadPhoto } from "../offline/evidence.ts";
import { send } from "../sync/client.ts";
import { useDevice } from "./device.tsx";

/** Keeps photos, and gives addresses of those this device or else the server has. */
export const usePhotoDoor = () => {
  const { database, now } = useDevice();
  const urls = useRef(new Map<string, string>());
  useEffect(() => {
    const made = urls.current;
    return () => {
      for (const url of made.values()) URL.revokeObjectURL(url);
      made.clear();
    };
  }, []);
  return useMemo(
    () => ({
      keepPhoto: async (blob: Blob) => ({ sha256: await keepPhoto(database, blob, now()) }),
      photoUrl: async (sha256: string) => {
        const made = urls.current.get(sha256);
        if (made) return made;
        const kept = await loadPhoto(database, sha256);
        const blob = kept ?? (await (await send(`/api/evidence/${sha256}`)).blob());
        const url = URL.createObjectURL(blob);
        urls.current.set(sha256, url);
        return url;
      },
    }),
    [database, now],
  );
};
