import { Sentence, WordButton } from "@roundbook/runner/form";
import type { StopDefinition } from "@roundbook/schemas";
import { anyOf } from "../messages/any-of.ts";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import { pageOrder } from "../model/commands.ts";
import { addStop, changeStop, removeStop, setTargets } from "../model/stop-edit.ts";
import { ManyEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

/** Which points, once they fail, let others not be asked: what is broken is not energised. */
export const StopSentences = () => {
  const { document, apply } = useDesk();
  const order = pageOrder(document).flatMap(({ points }) => points);
  if (order.length < 2) return null;
  const stops = document.stops ?? [];
  return (
    <>
      {stops.map((stop, at) => (
        // Rules have no identity but their place.
        <OneStop key={at} {...{ stop, at }} />
      ))}
      <Sentence verb={stops.length === 0 ? e("verb.stops") : undefined}>
        {stops.length === 0 && `${e("stop.none")} `}
        <WordButton quiet onClick={() => apply(addStop(document, order, e("stop.first-words")))}>
          {e("stop.add")}
        </WordButton>
      </Sentence>
    </>
  );
};

const OneStop = ({ stop, at }: { readonly stop: StopDefinition; readonly at: number }) => {
  const { document, apply, setOpen } = useDesk();
  const id = (part: string) => `stops/${at}/${part}`;
  const change = (next: (one: StopDefinition) => StopDefinition) =>
    apply(changeStop(document, at, next));
  const title = (name: string) => document.properties[name]?.title ?? name;
  const groupTitle = (name: string) =>
    document.groups?.find((group) => group.id === name)?.title ?? name;
  const { after, on, points = [], groups = [], say } = stop;
  const judged = pageOrder(document)
    .flatMap((group) => group.points)
    .filter((name) => (document.properties[name]?.limits ?? []).length > 0 || after.includes(name));
  const targets = pageOrder(document).flatMap((group) => group.points);
  const opened = useOpened({
    [id("after")]: () => (
      <ManyEdit
        label={e("l.stop-after")}
        choices={judged.map((value) => ({ value, label: title(value) }))}
        chosen={after}
        onChange={(chosen) => chosen.length > 0 && change((one) => ({ ...one, after: chosen }))}
      />
    ),
    [id("on")]: () => (
      <ManyEdit
        label={e("l.stop-on")}
        choices={(["fail", "advisory"] as const).map((value) => ({
          value,
          label: f(`verdict.${value}`),
        }))}
        chosen={on}
        onChange={(chosen) => chosen.length > 0 && change((one) => ({ ...one, on: chosen }))}
      />
    ),
    [id("targets")]: () => (
      <>
        <ManyEdit
          label={e("l.stop-groups")}
          choices={(document.groups ?? []).map((group) => ({
            value: group.id,
            label: group.title,
          }))}
          chosen={groups}
          onChange={(chosen) => change((one) => setTargets(one, one.points ?? [], chosen))}
        />
        <ManyEdit
          label={e("l.stop-points")}
          choices={targets
            .filter((name) => !after.includes(name))
            .map((value) => ({ value, label: title(value) }))}
          chosen={points}
          onChange={(chosen) => change((one) => setTargets(one, chosen, one.groups ?? []))}
        />
      </>
    ),
    [id("say")]: () => (
      <TextEdit
        label={e("l.stop-say")}
        value={say}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          change((one) => ({ ...one, say: text.trim() }));
          return undefined;
        }}
      />
    ),
  });
  return (
    <Sentence verb={e("verb.stops")} opened={opened}>
      {e("stop.after")}{" "}
      <OpenBlank id={id("on")}>{anyOf(on.map((one) => f(`verdict.${one}`)))}</OpenBlank>{" "}
      {e("stop.of")} <OpenBlank id={id("after")}>{anyOf(after.map(title))}</OpenBlank>{" "}
      {e("stop.not-asked")}{" "}
      <OpenBlank id={id("targets")}>
        {[...groups.map(groupTitle), ...points.map(title)].join(", ")}
      </OpenBlank>
      {`, ${e("stop.saying")} `}
      <OpenBlank id={id("say")}>{say}</OpenBlank>{" "}
      <WordButton
        quiet
        onClick={() => {
          setOpen(null);
          apply(removeStop(document, at));
        }}
      >
        {e("stop.remove")}
      </WordButton>
    </Sentence>
  );
};
