import { Loading, PlaceHeading, Row, Rows, WordButton } from "@roundbook/runner/form";
import type { DraftRow } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { sendJson } from "./client.ts";
import { useRefused } from "./use-refused.tsx";

/** Fetched when somebody looks: most days nobody begins a checklist. */
const useStarters = (asked: boolean) =>
  useQuery({
    queryKey: ["starters"],
    queryFn: async () => (await import("@roundbook/schemas/starters")).STARTERS,
    staleTime: Number.POSITIVE_INFINITY,
    enabled: asked,
  });

/** Checklists to begin with, each an example to confirm locally: one is copied into a draft. */
export const StartersList = () => {
  const [shown, setShown] = useState(false);
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  const starters = useStarters(shown);
  const begin = (document: object) =>
    guard(async () => {
      const draft = await sendJson<DraftRow>("POST", "/api/drafts", { document });
      await queries.invalidateQueries({ queryKey: ["drafts"] });
      navigate(`/draft/${draft.checklist}`);
    });
  return (
    <section>
      <PlaceHeading
        title={d("list.starters")}
        aside={
          <WordButton quiet aria-expanded={shown} onClick={() => setShown(!shown)}>
            {d(shown ? "list.starters-fold" : "list.starters-show")}
          </WordButton>
        }
      />
      {refused}
      {shown && starters.isPending && <Loading label={d("app.opening")} />}
      {shown && starters.data && (
        <Rows label={d("list.starters")}>
          {starters.data.map(({ key, title, note, checklist }) => (
            <Row
              key={key}
              name={title}
              second={note}
              due={d("list.points", { count: Object.keys(checklist.properties).length })}
              onPress={() => void begin(checklist)}
            />
          ))}
        </Rows>
      )}
    </section>
  );
};
