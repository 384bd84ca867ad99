import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useCallback, useEffect } from "react";
import { deviceKey } from "../offline/device-key.ts";
import { claimNumber, loadNumbers, type Proposal } from "../offline/number-blocks.ts";
import { renewNumbers } from "../sync/renew-numbers.ts";
import { useDevice } from "./device.tsx";

const KEY = ["numbers"] as const;

/** Numbers kept for this device, and the way to give one out. */
export const useNumbers = () => {
  const { database, person, connection } = useDevice();
  const { online } = connection;
  const queries = useQueryClient();
  const again = useCallback(() => queries.invalidateQueries({ queryKey: KEY }), [queries]);
  const { data: kept } = useQuery({
    queryKey: [...KEY, person.id],
    networkMode: "always",
    queryFn: async () => loadNumbers(database, (await deviceKey(database, person.id)).device),
  });
  useEffect(() => {
    if (online) void renewNumbers(database, person.id).then(again);
  }, [online, database, person.id, again]);
  /** False when another window of this device gave it out first. */
  const claim = async (leased: NonNullable<Proposal["leased"]>): Promise<boolean> => {
    const { device } = await deviceKey(database, person.id);
    const claimed = await claimNumber(database, device, leased);
    await again();
    return claimed;
  };
  return { kept, claim };
};
