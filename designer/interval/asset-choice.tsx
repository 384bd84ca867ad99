import { LineField, WordButton } from "@roundbook/runner/form";
import type { AssetRow, IntervalDates, Page } from "@roundbook/schemas";
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { iv } from "../messages/intervals.ts";
import { getJson } from "../pages/client.ts";

export type Chosen = NonNullable<IntervalDates["asset"]>;
const SHOWN = 8;

/** A search among the assets of a type. */
export const AssetChoice = ({
  assetType,
  onChoose,
}: {
  readonly assetType: string;
  readonly onChoose: (asset: Chosen) => void;
}) => {
  const [text, setText] = useState("");
  const found = useQuery({
    queryKey: ["assets", "q", text.trim()],
    queryFn: () =>
      getJson<Page<AssetRow>>(`/api/assets?limit=200&q=${encodeURIComponent(text.trim())}`),
    placeholderData: keepPreviousData,
  });
  const rows = (found.data?.rows ?? []).filter((row) => row.assetType === assetType);
  return (
    <div className="asset-choice">
      <LineField
        label={iv("dates.asset")}
        value={text}
        autoFocus
        autoComplete="off"
        onChange={(event) => setText(event.target.value)}
      />
      {found.data && rows.length === 0 && <p className="second">{iv("dates.no-match")}</p>}
      <ul>
        {rows.slice(0, SHOWN).map(({ id, number, description, path }) => (
          <li key={id}>
            <WordButton onClick={() => onChoose({ id, number, description })}>
              {`${number} ${description}`}
            </WordButton>{" "}
            <span className="second">{path.join(", ")}</span>
          </li>
        ))}
      </ul>
    </div>
  );
};
