import type { AssetRow } from "@roundbook/schemas";
import { useState } from "react";
import { useLocation } from "wouter";
import { Photos } from "../form/fields/photos.tsx";
import {
  Button,
  Buttons,
  ChoiceList,
  LeafWords,
  Sheet,
  WordButton,
  WordLink,
  WordList,
} from "../form/index.ts";
import { add } from "../messages/add.ts";
import { book } from "../messages/book.ts";
import { w } from "../messages/page.ts";
import { useDevice } from "./device.tsx";
import { useBundles } from "./use-bundle.ts";
import { usePhotoDoor } from "./use-photo-door.ts";
import { useWrite } from "./use-write.ts";

/** Writes down that an asset stands at a place of the site where this person is. */
const MoveSheet = ({
  asset,
  onClose,
}: {
  readonly asset: AssetRow;
  readonly onClose: () => void;
}) => {
  const { settings } = useDevice();
  const write = useWrite();
  const rows = useBundles().data ?? [];
  const here = rows.find(({ site }) => site === settings.site)?.bundle;
  const [place, setPlace] = useState<string | null>(null);
  const [written, setWritten] = useState<string | null>(null);
  const choices = (here?.places ?? []).filter(({ id }) => id !== asset.place);
  const nameOf = (id: string) => choices.find((one) => one.id === id)?.name ?? "";
  const submit = async () => {
    if (place === null || !here) return;
    const name = nameOf(place);
    setWritten(name);
    await write({
      made: { kind: "moved", body: { place } },
      asset: asset.id,
      contents: [],
      zone: here.site.zone,
      summary: {
        number: asset.number,
        description: asset.description,
        words: add("move.words", { place: name }),
        overall: null,
      },
    });
  };
  return (
    <Sheet
      number={asset.number}
      title={add("move.title")}
      second={add("move.from", { place: asset.path.join(" › ") })}
      close={add("move.close")}
      onClose={onClose}
    >
      {written !== null ? (
        <LeafWords>
          <p role="status">{add("move.written", { place: written })}</p>
        </LeafWords>
      ) : (
        <>
          <ChoiceList
            label={add("move.choose")}
            choices={choices.map(({ id, name }) => ({ value: id, label: name }))}
            chosen={place}
            onChoose={setPlace}
          />
          <Buttons>
            <Button kind="primary" disabled={place === null} onClick={() => void submit()}>
              {add("move.go")}
            </Button>
          </Buttons>
        </>
      )}
    </Sheet>
  );
};

/** Another asset in use that bears the same number, among those this device keeps. */
const useClash = (asset: AssetRow): AssetRow | undefined => {
  const rows = useBundles().data ?? [];
  const key = asset.number.trim().toLowerCase();
  if (asset.status === "retired") return undefined;
  return rows
    .flatMap(({ bundle }) => bundle.assets)
    .find(
      (one) =>
        one.id !== asset.id && one.status !== "retired" && one.number.trim().toLowerCase() === key,
    );
};

/** What tells that it is this one: its picture, status and serial; and what may be written of it. */
export const AssetHead = ({ asset }: { readonly asset: AssetRow }) => {
  const { person } = useDevice();
  const [, navigate] = useLocation();
  const door = usePhotoDoor();
  const clash = useClash(asset);
  const [moving, setMoving] = useState(false);
  const { number, description, photo, serial, status } = asset;
  return (
    <>
      <LeafWords>
        {photo && (
          <Photos
            title={add("asset.photo", { number, description })}
            hashes={[photo]}
            most={1}
            door={door}
          />
        )}
        <p>
          <strong className="first-capital">{w(`status.${status}`)}</strong>
          {serial && (
            <>
              {". "}
              {book("life.serial")} <span className="mono">{serial}</span>
            </>
          )}
        </p>
        {clash && (
          <p className="danger">
            {add("asset.clash", {
              description: clash.description,
              place: clash.path.join(" › "),
            })}{" "}
            <WordLink href={`/asset/${clash.id}`} onFollow={navigate}>
              {add("asset.clash-open")}
            </WordLink>
          </p>
        )}
        {person.role !== "auditor" && (
          <WordList>
            <WordButton onClick={() => setMoving(true)}>{add("asset.move")}</WordButton>
            <WordLink href={`/register/add?copy=${asset.id}`} onFollow={navigate}>
              {add("asset.copy")}
            </WordLink>
          </WordList>
        )}
      </LeafWords>
      {moving && <MoveSheet asset={asset} onClose={() => setMoving(false)} />}
    </>
  );
};
