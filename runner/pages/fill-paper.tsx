import { type CivilDate, formatCivilDate, parseCivilDate } from "@roundbook/schemas";
import { type ReactNode, useState } from "react";
import {
  Button,
  Buttons,
  LeafWords,
  LineField,
  longDay,
  Page,
  PaperPhotos,
  type PhotoDoor,
  PlaceHeading,
  StateLine,
  WordButton,
} from "../form/index.ts";
import { paper } from "../messages/paper.ts";
import type { PaperDraft } from "../offline/database.ts";

export const NEW_PAPER: PaperDraft = { doneOn: "", doneBy: "", sheet: [] };

/** The day a sheet was done on, once it is one that has come. */
export const doneOnOf = ({ doneOn }: PaperDraft, today: CivilDate): CivilDate | undefined => {
  const day = parseCivilDate(doneOn);
  return day !== undefined && day <= today ? day : undefined;
};

/** Asks when and by whom a sheet was done before anything of it is keyed in. */
export const PaperAsk = ({
  given,
  today,
  photos,
  title,
  onGiven,
}: {
  readonly title: ReactNode;
  readonly given: PaperDraft;
  readonly today: CivilDate;
  readonly photos: PhotoDoor;
  readonly onGiven: (given: PaperDraft) => void;
}) => {
  const [draft, setDraft] = useState(given);
  const [pressed, setPressed] = useState(false);
  const day = parseCivilDate(draft.doneOn);
  const fault =
    day === undefined
      ? paper("paper.done-on-needed")
      : day > today
        ? paper("paper.done-on-late")
        : undefined;
  return (
    <Page
      dock={
        <Buttons>
          <Button
            kind="primary"
            onClick={() => {
              setPressed(true);
              if (fault === undefined) onGiven(draft);
            }}
          >
            {paper("paper.go")}
          </Button>
        </Buttons>
      }
    >
      {title}
      <PlaceHeading title={paper("paper.title")} />
      <LeafWords>
        <p>{paper("paper.about")}</p>
        <LineField
          type="date"
          label={paper("paper.done-on")}
          value={draft.doneOn}
          max={formatCivilDate(today)}
          data-empty={draft.doneOn === ""}
          error={pressed ? fault : undefined}
          onChange={({ target }) => setDraft({ ...draft, doneOn: target.value })}
        />
        <LineField
          label={paper("paper.done-by")}
          help={paper("paper.done-by-help")}
          maxLength={200}
          autoComplete="off"
          value={draft.doneBy}
          onChange={({ target }) => setDraft({ ...draft, doneBy: target.value })}
        />
      </LeafWords>
      <PlaceHeading title={paper("paper.sheet")} />
      <LeafWords>
        <PaperPhotos
          title={paper("paper.sheet")}
          hashes={draft.sheet}
          most={20}
          door={photos}
          onAdd={(sha256) => setDraft({ ...draft, sheet: [...draft.sheet, sha256] })}
          onRemove={(sha256) =>
            setDraft({ ...draft, sheet: draft.sheet.filter((one) => one !== sha256) })
          }
        />
      </LeafWords>
    </Page>
  );
};

/** Says above the points what is keyed in. */
export const PaperLine = ({
  given,
  day,
  onChange,
}: {
  readonly given: PaperDraft;
  readonly day: CivilDate;
  readonly onChange: () => void;
}) => (
  <StateLine>
    {given.doneBy.trim() === ""
      ? paper("paper.said", { day: longDay(day) })
      : paper("paper.said-by", { day: longDay(day), name: given.doneBy.trim() })}{" "}
    <WordButton onClick={onChange}>{paper("paper.change")}</WordButton>
  </StateLine>
);
