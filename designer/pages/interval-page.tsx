import { Empty, Loading, TitleBlock, WordLink } from "@roundbook/runner/form";
import { useRef, useState } from "react";
import { v7 } from "uuid";
import { useLocation, useParams } from "wouter";
import { IntervalEditor } from "../interval/interval-editor.tsx";
import type { Told } from "../interval/told.ts";
import { d } from "../messages/desk.ts";
import { iv } from "../messages/intervals.ts";
import { DeskPage } from "./desk-page.tsx";
import { useAssetTypes, useChecklists, useIntervalDrafts, useIntervals } from "./queries.ts";

export const IntervalPage = () => {
  const { id: named = "new" } = useParams<{ id: string }>();
  const [, navigate] = useLocation();
  const intervals = useIntervals();
  const drafts = useIntervalDrafts();
  const types = useAssetTypes();
  const checklists = useChecklists();
  // A new one has its id from the start, so that keeping it does not begin the page anew.
  const made = useRef(v7());
  // Held above the editor, which begins anew under the address a new interval gets.
  const [told, setTold] = useState<Told>(null);
  if (!intervals.data || drafts.isPending || !types.data || !checklists.data) {
    return (
      <DeskPage current="intervals">
        <Loading label={d("app.opening")} />
      </DeskPage>
    );
  }
  const id = named === "new" ? made.current : named;
  const row = intervals.data.find((one) => one.id === id);
  const kept = drafts.data?.find((one) => one.id === id);
  if (!row && !kept && id !== made.current) {
    return (
      <DeskPage current="intervals">
        <TitleBlock title={iv("list.title")} />
        <Empty
          sentence={iv("page.gone")}
          actions={
            <WordLink href="/designer/intervals" onFollow={() => navigate("/intervals")}>
              {iv("list.title")}
            </WordLink>
          }
        />
      </DeskPage>
    );
  }
  return (
    <IntervalEditor
      key={id}
      {...{ id, row, kept, told, onTold: setTold }}
      types={types.data}
      checklists={checklists.data}
      intervals={intervals.data}
    />
  );
};
