import {
  Button,
  dateWords,
  Empty,
  FieldPair,
  LeafWords,
  LineField,
  Loading,
  Row,
  Rows,
  SelectField,
  StateLine,
  TitleBlock,
  useMessages,
  WordButton,
  WordLink,
  whyWords,
} from "@roundbook/runner/form";
import type { CivilDate, Counted, DueCounts, DueRow, Page } from "@roundbook/schemas";
import { keepPreviousData, useInfiniteQuery, useQuery } from "@tanstack/react-query";
import { useLocation, useSearch } from "wouter";
import { d } from "../messages/desk.ts";
import { pl } from "../messages/plan.ts";
import { civilToday } from "../model/interval-draft.ts";
import { CannotRead } from "./cannot-read.tsx";
import { getJson } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { DueStanding, dayOf } from "./due-standing.tsx";
import { useChoices } from "./plan-scope.tsx";
import { useAssetTypes, usePlaces } from "./queries.ts";

const STATUSES = [
  "overdue",
  "blocked",
  "undecided",
  "never-done",
  "due",
  "late-window",
  "early",
  "excused",
  "not-yet",
] as const;
const FILTERS = ["site", "place", "keeper", "assetType", "status", "q", "on"] as const;
type Filter = (typeof FILTERS)[number];

const counted = ({ count, more }: Counted): string =>
  more ? pl("due.or-more", { count }) : String(count);

const DueLine = ({ row, today }: { readonly row: DueRow; readonly today: CivilDate }) => {
  const messages = useMessages();
  const [, navigate] = useLocation();
  return (
    <Row
      number={row.number}
      name={`${row.description}, ${row.intervalTitle}`}
      second={whyWords(messages, row.why, today)}
      href={`/designer/assets/${row.asset}`}
      onFollow={() => navigate(`/assets/${row.asset}`)}
      due={<DueStanding row={row} today={today} />}
    />
  );
};

/** Everything that is due, filtered; the filters stand in the address. */
export const DueListPage = () => {
  const [, navigate] = useLocation();
  const search = new URLSearchParams(useSearch());
  const asked = new URLSearchParams();
  for (const name of FILTERS) {
    const value = search.get(name);
    if (value) asked.set(name, value);
  }
  const set = (name: Filter, value: string) => {
    if (value === "") asked.delete(name);
    else asked.set(name, value);
    if (name === "site") asked.delete("place");
    navigate(`/due?${asked}`, { replace: true });
  };
  const choices = useChoices();
  const places = usePlaces().data ?? [];
  const types = useAssetTypes().data ?? [];
  const pages = useInfiniteQuery({
    queryKey: ["due", String(asked)],
    queryFn: ({ pageParam }) => {
      const query = new URLSearchParams(asked);
      if (pageParam !== "") query.set("cursor", pageParam);
      return getJson<Page<DueRow>>(`/api/due?${query}`);
    },
    initialPageParam: "",
    // The rows stay while a word is being typed.
    placeholderData: keepPreviousData,
    getNextPageParam: (last: Page<DueRow>) => last.next,
  });
  const counts = useQuery({
    queryKey: ["due", "count", String(asked)],
    queryFn: () => {
      const query = new URLSearchParams(asked);
      query.delete("status");
      return getJson<DueCounts>(`/api/due/count?${query}`);
    },
  }).data;
  const on = asked.get("on");
  const today = dayOf(on ?? civilToday(new Date()));
  const filtered = [...asked.keys()].some((name) => name !== "on");
  const rows = pages.data?.pages.flatMap((page) => page.rows) ?? [];
  const site = asked.get("site");
  const inSite = places.filter((place) => place.level !== "site" && isIn(places, place.id, site));
  const select = (name: Filter, label: string, none: string, options: readonly Option[]) => (
    <SelectField
      label={label}
      none={none}
      options={[...options]}
      value={asked.get(name) ?? ""}
      onChange={(event) => set(name, event.target.value)}
    />
  );
  return (
    <DeskPage current="plan">
      <TitleBlock
        title={pl("due.title")}
        second={pl("due.second")}
        actions={
          <WordLink href="/designer/plan" onFollow={() => navigate("/plan")}>
            {pl("plan.title")}
          </WordLink>
        }
      />
      {on !== null && (
        <StateLine>
          {pl(on < civilToday(new Date()) ? "due.as-past" : "due.as-on", { day: dateWords(on) })}{" "}
          <WordButton onClick={() => set("on", "")}>{pl("due.today")}</WordButton>
        </StateLine>
      )}
      {counts && (
        <StateLine>
          {pl("due.counted", {
            all: counted(counts.all),
            overdue: counted(counts.overdue),
            due: counted(counts.due),
            never: counted(counts.neverDone),
          })}{" "}
          {(["blocked", "undecided", "excused"] as const)
            .filter((name) => counts[name].count > 0)
            .map((name) => pl(`due.${name}`, { count: counted(counts[name]) }))
            .join(" ")}
        </StateLine>
      )}
      <LeafWords>
        <FieldPair>
          {select(
            "site",
            pl("due.site"),
            pl("due.every-site"),
            choices.sites.map(({ id, name }) => ({ value: id, label: name })),
          )}
          {select(
            "status",
            pl("due.status"),
            pl("due.every-status"),
            STATUSES.map((value) => ({ value, label: pl(`status.${value}`) })),
          )}
        </FieldPair>
        <FieldPair>
          {select(
            "keeper",
            pl("due.keeper"),
            pl("due.anybody"),
            [...choices.people, ...choices.teams].map(({ id, name }) => ({
              value: id,
              label: name,
            })),
          )}
          {select(
            "assetType",
            pl("due.type"),
            pl("due.every-type"),
            types.map(({ assetType, title }) => ({ value: assetType, label: title })),
          )}
        </FieldPair>
        <FieldPair>
          {site !== null &&
            select(
              "place",
              pl("due.place"),
              pl("due.every-place"),
              inSite.map(({ id, name }) => ({ value: id, label: name })),
            )}
          <LineField
            label={pl("due.words")}
            value={asked.get("q") ?? ""}
            onChange={(event) => set("q", event.target.value)}
          />
        </FieldPair>
      </LeafWords>
      {pages.isPending && <Loading label={d("app.opening")} />}
      {pages.isError && <CannotRead error={pages.error} onAgain={() => void pages.refetch()} />}
      {pages.isSuccess && rows.length === 0 && (
        <Empty sentence={pl(filtered ? "due.none" : "due.none-at-all")}>
          <p>{pl(filtered ? "due.none-next" : "due.none-at-all-next")}</p>
        </Empty>
      )}
      <Rows label={pl("due.title")}>
        {rows.map((row) => (
          <DueLine key={`${row.asset} ${row.interval}`} row={row} today={today} />
        ))}
      </Rows>
      {pages.hasNextPage && (
        <LeafWords>
          <Button
            kind="secondary"
            disabled={pages.isFetchingNextPage}
            onClick={() => void pages.fetchNextPage()}
          >
            {pl("due.more")}
          </Button>
        </LeafWords>
      )}
    </DeskPage>
  );
};

interface Option {
  readonly value: string;
  readonly label: string;
}

const isIn = (
  places: readonly { readonly id: string; readonly parent: string | null }[],
  id: string,
  site: string | null,
): boolean => {
  for (let at = places.find((one) => one.id === id); at; ) {
    if (at.id === site) return true;
    const { parent } = at;
    at = places.find((one) => one.id === parent);
  }
  return false;
};
