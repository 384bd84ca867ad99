import { WordButton, WordList } from "@roundbook/runner/form";
import type { PersonRow, PlaceRow, TeamRow } from "@roundbook/schemas";
import { useLocation, useSearch } from "wouter";
import { pl } from "../messages/plan.ts";
import { usePeople, usePlaces, useTeams } from "./queries.ts";

/** Whose or where: one of them, or neither. */
export type Scope =
  | { readonly kind: "all" }
  | { readonly kind: "site" | "keeper"; readonly id: string };

export interface Choices {
  readonly sites: readonly PlaceRow[];
  readonly people: readonly PersonRow[];
  readonly teams: readonly TeamRow[];
}

export const useChoices = (): Choices => {
  const places = usePlaces().data ?? [];
  return {
    sites: places.filter(({ level }) => level === "site"),
    people: (usePeople().data ?? []).filter(({ role }) => role !== "auditor"),
    teams: useTeams().data ?? [],
  };
};

export const scopeQuery = (scope: Scope): string =>
  scope.kind === "all" ? "" : `?${scope.kind}=${scope.id}`;

/** The scope that an address names; a site leads. */
export const scopeIn = (search: string): Scope => {
  const query = new URLSearchParams(search);
  for (const kind of ["site", "keeper"] as const) {
    const id = query.get(kind);
    if (id) return { kind, id };
  }
  return { kind: "all" };
};

/** The scope of the plan; it stands in the address. */
export const useScope = () => {
  const [, navigate] = useLocation();
  const scope = scopeIn(useSearch());
  const setScope = (next: Scope) => navigate(`/plan${scopeQuery(next)}`, { replace: true });
  return { scope, setScope, choices: useChoices() };
};

/** The due list of the same scope, today or as it would stand on an ISO day. */
export const dueAddress = (scope: Scope, on?: string): string => {
  const query = new URLSearchParams(scopeQuery(scope));
  if (on !== undefined) query.set("on", on);
  return query.size === 0 ? "/due" : `/due?${query}`;
};

export const scopeWords = (scope: Scope, { sites, people, teams }: Choices): string =>
  scope.kind === "all"
    ? pl("plan.all-sites")
    : ([...sites, ...people, ...teams].find(({ id }) => id === scope.id)?.name ?? "");

export const PlanScope = ({
  scope,
  choices,
  onChoose,
}: {
  readonly scope: Scope;
  readonly choices: Choices;
  onChoose(scope: Scope): void;
}) => {
  const line = (kind: "site" | "keeper", id: string, name: string) => (
    <WordButton
      key={id}
      chosen={scope.kind === kind && scope.id === id}
      onClick={() => onChoose({ kind, id })}
    >
      {name}
    </WordButton>
  );
  return (
    <div className="plan-scope">
      <WordList>
        <WordButton chosen={scope.kind === "all"} onClick={() => onChoose({ kind: "all" })}>
          {pl("due.every-site")}
        </WordButton>
        {choices.sites.map(({ id, name }) => line("site", id, name))}
        {[...choices.people, ...choices.teams].map(({ id, name }) => line("keeper", id, name))}
      </WordList>
    </div>
  );
};
