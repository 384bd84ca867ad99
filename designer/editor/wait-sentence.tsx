import { Sentence } from "@roundbook/runner/form";
import type { PointDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { changePoint } from "../model/commands.ts";
import { readNumber } from "../model/read-number.ts";
import { setWait } from "../model/several-edit.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

const MOST_SECONDS = 86_400;

/** How long it is waited before a reading: a minute of running water, say. */
export const WaitSentence = ({
  name,
  point,
}: {
  readonly name: string;
  readonly point: PointDefinition;
}) => {
  const { document, apply } = useDesk();
  const { atLeast, atMost } = point.ask?.wait ?? {};
  const id = (part: string) => `${name}/ask/wait/${part}`;
  const seconds = (bound: "atLeast" | "atMost") => () => (
    <TextEdit
      label={e(`l.wait-${bound}`)}
      value={String(point.ask?.wait?.[bound] ?? "")}
      onTake={(text) => {
        const read = text.trim() === "" ? undefined : readNumber(text);
        const fits = read !== undefined && read > 0 && read <= MOST_SECONDS;
        if (text.trim() !== "" && !fits) return e("l.number-wrong");
        apply(changePoint(document, name, (one) => setWait(one, bound, read)));
        return undefined;
      }}
    />
  );
  const opened = useOpened({
    [id("atLeast")]: seconds("atLeast"),
    [id("atMost")]: seconds("atMost"),
  });
  return (
    <Sentence verb={e("verb.waits")} opened={opened}>
      <OpenBlank id={id("atLeast")}>
        {atLeast === undefined ? e("s.no-wait") : e("s.wait-atLeast", { seconds: atLeast })}
      </OpenBlank>
      {(atLeast !== undefined || atMost !== undefined) && (
        <>
          {", "}
          <OpenBlank id={id("atMost")}>
            {atMost === undefined ? e("s.wait-any") : e("s.wait-atMost", { seconds: atMost })}
          </OpenBlank>
        </>
      )}
    </Sentence>
  );
};
