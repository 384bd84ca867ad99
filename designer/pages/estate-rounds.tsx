import {
  Button,
  FieldPair,
  LeafWords,
  LineField,
  PlaceHeading,
  SelectField,
} from "@roundbook/runner/form";
import type { PersonRow, PlaceRow, TeamRow } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { v7 } from "uuid";
import { ro } from "../messages/rounds.ts";
import { sendJson } from "./client.ts";
import { inWalkingOrder, pathOf } from "./estate-places.tsx";
import { usePeople, usePlaces, useTeams } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

/** Sends one change and brings what is shown up to date. */
const useSend = () => {
  const queries = useQueryClient();
  const { refused, guard, busy } = useRefused();
  /** Whether it was taken. */
  const send = async (path: string, body: object): Promise<boolean> => {
    let taken = false;
    await guard(async () => {
      await sendJson("PUT", path, body);
      taken = true;
      await queries.invalidateQueries();
    });
    return taken;
  };
  return { refused, send, busy };
};

const Keepers = ({
  places,
  who,
}: {
  readonly places: readonly PlaceRow[];
  readonly who: readonly { readonly id: string; readonly name: string }[];
}) => {
  const { refused, send } = useSend();
  return (
    <>
      {places.map((place) => (
        <SelectField
          key={place.id}
          label={ro("rounds.keeper", { place: pathOf(places, place) })}
          none={ro(place.parent === null ? "rounds.nobody" : "rounds.as-above")}
          options={who.map(({ id, name }) => ({ value: id, label: name }))}
          value={place.keeper ?? ""}
          onChange={(event) =>
            void send(`/api/places/${place.id}/keeper`, { keeper: event.target.value || null })
          }
        />
      ))}
      {refused}
    </>
  );
};

const Team = ({
  team,
  people,
}: {
  readonly team: TeamRow;
  readonly people: readonly PersonRow[];
}) => {
  // A list is sent as a whole: the next tick waits until the last one is known.
  const { refused, send, busy } = useSend();
  const [name, setName] = useState(team.name);
  const renamed = name.trim() !== "" && name.trim() !== team.name;
  const rename = () => send(`/api/teams/${team.id}`, { name: name.trim(), members: team.members });
  const turn = (id: string) => {
    const members = team.members.includes(id)
      ? team.members.filter((one) => one !== id)
      : [...team.members, id];
    return send(`/api/teams/${team.id}`, { name: team.name, members });
  };
  return (
    <fieldset className="blank-choices">
      <legend>{team.name}</legend>
      <FieldPair>
        <LineField
          label={ro("rounds.team-name")}
          autoComplete="off"
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
        <Button kind="secondary" disabled={busy || !renamed} onClick={() => void rename()}>
          {ro("rounds.team-rename")}
        </Button>
      </FieldPair>
      {people.map(({ id, name }) => (
        <label key={id} className="desk-tick">
          <input
            type="checkbox"
            disabled={busy}
            checked={team.members.includes(id)}
            onChange={() => void turn(id)}
          />
          {name}
        </label>
      ))}
      {refused}
    </fieldset>
  );
};

const Time = ({ person }: { readonly person: PersonRow }) => {
  const { refused, send } = useSend();
  const stored = person.minutesAWeek === undefined ? "" : String(person.minutesAWeek / 60);
  const [text, setText] = useState(stored);
  const hours = Number(text.replace(",", "."));
  const wrong = text.trim() === "" ? false : !(hours >= 0 && hours <= 168);
  const save = () => {
    if (text.trim() === "") return setText(stored);
    if (wrong || text === stored) return;
    void send(`/api/people/${person.id}/time`, { minutes: Math.round(hours * 60) });
  };
  return (
    <>
      <LineField
        label={ro("rounds.time", { name: person.name })}
        inputMode="decimal"
        autoComplete="off"
        value={text}
        error={wrong ? ro("rounds.time-wrong") : undefined}
        onChange={(event) => setText(event.target.value)}
        onBlur={save}
      />
      {refused}
    </>
  );
};

const NewTeam = () => {
  const { refused, send, busy } = useSend();
  const [name, setName] = useState("");
  // A name that was refused stays, so that it can be mended.
  const make = async () => {
    if (await send(`/api/teams/${v7()}`, { name: name.trim(), members: [] })) setName("");
  };
  return (
    <FieldPair>
      <LineField
        label={ro("rounds.team-name")}
        autoComplete="off"
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <div>
        <Button kind="secondary" disabled={busy || name.trim() === ""} onClick={() => void make()}>
          {ro("rounds.team-go")}
        </Button>
        {refused}
      </div>
    </FieldPair>
  );
};

/** Who keeps which place, teams, and how much time a week people have. */
export const RoundsKept = () => {
  const places = usePlaces().data;
  const people = usePeople().data;
  const teams = useTeams().data;
  if (!places || !people || !teams || places.length === 0) return null;
  const walking = people.filter(({ role }) => role !== "auditor");
  return (
    <section>
      <PlaceHeading title={ro("rounds.title")} />
      <LeafWords>
        <p className="second">{ro("rounds.about")}</p>
        <Keepers places={inWalkingOrder(places, null)} who={[...walking, ...teams]} />
        <h3>{ro("rounds.teams")}</h3>
        {teams.map((team) => (
          <Team key={team.id} team={team} people={walking} />
        ))}
        <NewTeam />
        {walking.map((person) => (
          <Time key={`${person.id} ${person.minutesAWeek}`} person={person} />
        ))}
      </LeafWords>
    </section>
  );
};
