import {
  Button,
  dateWords,
  LeafWords,
  LineField,
  PlaceHeading,
  StateLine,
  WEEKDAYS,
} from "@roundbook/runner/form";
import type { DigestRow } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { ro } from "../messages/rounds.ts";
import { getJson, sendJson } from "./client.ts";
import { useRefused } from "./use-refused.tsx";

export const Digest = () => {
  const { data } = useQuery({
    queryKey: ["digest"],
    queryFn: () => getJson<DigestRow>("/api/digest"),
  });
  return data ? <DigestForm key={JSON.stringify(data)} row={data} /> : null;
};

const lastWords = ({ last }: DigestRow): string | undefined => {
  if (last === null) return undefined;
  const day = dateWords(last.day);
  if (last.sentAt !== null) return ro("digest.sent", { day });
  return ro(last.waits ? "digest.waits" : "digest.failed", { day, error: last.error ?? "" });
};

/** Where the signed-in person gets the digest, and on which days. */
const DigestForm = ({ row }: { readonly row: DigestRow }) => {
  const queries = useQueryClient();
  const { refused, guard, busy } = useRefused();
  const [address, setAddress] = useState(row.address ?? "");
  const [days, setDays] = useState<readonly number[]>(row.weekdays.length > 0 ? row.weekdays : [1]);
  const turn = (day: number) =>
    setDays(days.includes(day) ? days.filter((one) => one !== day) : [...days, day]);
  const save = () =>
    guard(async () => {
      const body = { address: address.trim() || null, weekdays: days };
      await sendJson("PUT", "/api/digest", body);
      await queries.invalidateQueries({ queryKey: ["digest"] });
    });
  const last = lastWords(row);
  return (
    <section>
      <PlaceHeading title={ro("digest.title")} />
      {last && <StateLine>{last}</StateLine>}
      <LeafWords>
        <p className="second">{ro(row.canSend ? "digest.about" : "digest.cannot")}</p>
        <LineField
          label={ro("digest.address")}
          type="email"
          autoComplete="email"
          value={address}
          onChange={(event) => setAddress(event.target.value)}
        />
        <fieldset className="blank-choices">
          <legend>{ro("digest.days")}</legend>
          {WEEKDAYS.map((name, at) => (
            <label key={name} className="desk-tick">
              <input
                type="checkbox"
                checked={days.includes(at + 1)}
                onChange={() => turn(at + 1)}
              />
              {name}
            </label>
          ))}
        </fieldset>
        {refused}
        <Button kind="secondary" disabled={busy} onClick={() => void save()}>
          {ro("digest.save")}
        </Button>
      </LeafWords>
    </section>
  );
};
