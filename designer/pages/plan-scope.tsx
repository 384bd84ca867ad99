import { WordButton, WordList } from "@roundbook/runner/form";
import type { PersonRow, PlaceRow, TeamRow } from "@roundbook/schemas";
import { useState } from "react";
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

export const useScope = () => {
  const [scope, setScope] = useState<Scope>({ kind: "all" });
  return { scope, setScope, choices: useChoices() };
};

export const scopeQuery = (scope: Scope): string =>
  scope.kind === "all" ? "" : `?${scope.kind}=${scope.id}`;

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
