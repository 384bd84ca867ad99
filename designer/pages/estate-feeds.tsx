import {
  Button,
  dateWords,
  LeafWords,
  PlaceHeading,
  Row,
  Rows,
  SelectField,
  StateLine,
  WordButton,
} from "@roundbook/runner/form";
import type { FeedMade, FeedRow } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { ro } from "../messages/rounds.ts";
import { getJson, sendJson } from "./client.ts";
import { usePeople, usePlaces } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

/** Secret addresses that calendar programs read: made, shown once, revoked. */
export const Feeds = () => {
  const queries = useQueryClient();
  const places = usePlaces().data ?? [];
  const people = usePeople().data ?? [];
  const { refused, guard, busy } = useRefused();
  const [scope, setScope] = useState("");
  const [made, setMade] = useState<string>();
  const [sure, setSure] = useState<string>();
  const feeds = useQuery({
    queryKey: ["feeds"],
    queryFn: async () => (await getJson<{ rows: FeedRow[] }>("/api/feeds")).rows,
  }).data;
  const sites = places.filter(({ level }) => level === "site");
  const subjects = [
    ...sites.map(({ id, name }) => ({ value: `site ${id}`, label: name })),
    ...people.map(({ id, name }) => ({ value: `person ${id}`, label: name })),
  ];
  const nameOf = ({ scope: of }: FeedRow): string => {
    const id = "site" in of ? of.site : of.person;
    return [...sites, ...people].find((one) => one.id === id)?.name ?? "";
  };
  const make = () =>
    guard(async () => {
      const [kind = "", id = ""] = scope.split(" ");
      const { path } = await sendJson<FeedMade>("POST", "/api/feeds", { [kind]: id });
      setMade(`${location.origin}${path}`);
      await queries.invalidateQueries({ queryKey: ["feeds"] });
    });
  const revoke = (id: string) =>
    guard(async () => {
      if (sure !== id) return setSure(id);
      await sendJson("DELETE", `/api/feeds/${id}`);
      setSure(undefined);
      setMade(undefined);
      await queries.invalidateQueries({ queryKey: ["feeds"] });
    });
  const inUse = (feeds ?? []).filter(({ revokedAt }) => revokedAt === null);
  return (
    <section>
      <PlaceHeading title={ro("feeds.title")} />
      {made && (
        <StateLine>
          {ro("feeds.made")} <span className="mono feed-address">{made}</span>
        </StateLine>
      )}
      <LeafWords>
        <p className="second">{ro("feeds.about")}</p>
        {feeds && inUse.length === 0 && <p>{ro("feeds.none")}</p>}
      </LeafWords>
      <Rows>
        {inUse.map((feed) => (
          <Row
            key={feed.id}
            name={ro("feeds.line", {
              name: nameOf(feed),
              day: dateWords(feed.createdAt.slice(0, 10)),
            })}
            more={
              <WordButton onClick={() => void revoke(feed.id)}>
                {ro(sure === feed.id ? "feeds.revoke-sure" : "feeds.revoke")}
              </WordButton>
            }
          />
        ))}
      </Rows>
      <LeafWords>
        <SelectField
          label={ro("feeds.scope")}
          none=""
          options={subjects}
          value={scope}
          onChange={(event) => setScope(event.target.value)}
        />
        {refused}
        <Button kind="secondary" disabled={busy || scope === ""} onClick={() => void make()}>
          {ro("feeds.go")}
        </Button>
      </LeafWords>
    </section>
  );
};
