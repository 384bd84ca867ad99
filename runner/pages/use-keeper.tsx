import { useEffect, useMemo, useState } from "react";
import { StateLine, WordButton } from "../form/index.ts";
import { keep } from "../messages/keep.ts";
import { useDevice } from "./device.tsx";
import { DraftKeeper, type Keeping } from "./draft-keeper.ts";
import { saveUnsent } from "./save-unsent.ts";

/** Keeps the draft of this page, whatever happens to the page. */
export const useKeeper = () => {
  const { database, now } = useDevice();
  const keeper = useMemo(() => new DraftKeeper(database, now), [database, now]);
  const [keeping, setKeeping] = useState<Keeping>("kept");
  useEffect(() => {
    keeper.onKeeping = setKeeping;
    const flush = () => void keeper.flush();
    document.addEventListener("visibilitychange", flush);
    window.addEventListener("pagehide", flush);
    document.addEventListener("focusout", flush);
    return () => {
      flush();
      document.removeEventListener("visibilitychange", flush);
      window.removeEventListener("pagehide", flush);
      document.removeEventListener("focusout", flush);
    };
  }, [keeper]);
  return { keeper, keeping };
};

/** What the device could not keep is said at once, with what can be done about it. */
export const Unkept = ({ keeper, keeping }: ReturnType<typeof useKeeper>) => {
  const { database, now } = useDevice();
  if (keeping === "kept") return null;
  return (
    <StateLine>
      <span role="alert">{keep(`keep.${keeping}`)}</span>{" "}
      <WordButton onClick={() => void keeper.flush()}>{keep("keep.again")}</WordButton>{" "}
      <WordButton onClick={() => void saveUnsent(database, now(), keeper.unkept)}>
        {keep("keep.save")}
      </WordButton>
    </StateLine>
  );
};
