import { PlaceHeading, Row, Rows } from "@roundbook/runner/form";
import {
  type Checklist,
  type PointDefinition,
  particularsInOrder,
  pointKind,
} from "@roundbook/schemas";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { pageOrder } from "../model/commands.ts";
import { particularFacts, scoreFacts, valueFacts } from "../model/fact-words.ts";
import { limitSentence } from "../model/limit-sentence.ts";
import { pointFacts } from "../model/point-facts.ts";
import { repeatWords, stopWords } from "../model/sequence-words.ts";

interface Fact {
  readonly key: string;
  readonly verb: string;
  readonly name: string;
  readonly words: string;
}

const fact = (
  key: string,
  verb: string,
  [name = "", ...rest]: readonly string[],
  between = ", ",
): Fact => ({ key, verb, name, words: rest.join(between) });

/** A choice and a grade say what they ask for by their answers. */
const askWords = (document: Checklist, point: PointDefinition): string => {
  const kind = pointKind(point);
  const said = ["choice", "choices", "graded", "calculated"].includes(kind)
    ? []
    : [e(`kind.${kind}`)];
  return [...said, ...pointFacts(document, point)].join(", ");
};

const around = (document: Checklist): Fact[] => [
  ...(document.cautions ?? []).map((caution, at) => fact(`c${at}`, e("verb.warns"), [caution])),
  ...particularsInOrder(document.particulars ?? {}).map(([name, definition]) =>
    fact(`p${name}`, e("verb.needs"), particularFacts(definition)),
  ),
  ...Object.entries(document.values ?? {}).map(([name, value]) =>
    fact(`v${name}`, e("verb.counts"), [
      ...(value.title ? [] : [name]),
      ...valueFacts(document, value),
    ]),
  ),
  ...Object.entries(document.scores ?? {}).map(([name, score]) =>
    fact(`s${name}`, e("verb.scores"), scoreFacts(document, score), "; "),
  ),
  ...stopWords(document).map((words, at) => fact(`t${at}`, e("verb.stops"), [words])),
];

const Around = ({ document }: { readonly document: Checklist }) => {
  const facts = around(document);
  if (facts.length === 0) return null;
  return (
    <section>
      <PlaceHeading title={e("around.title")} />
      <Rows>
        {facts.map(({ key, verb, name, words }) => (
          <Row key={key} name={name} second={words} due={verb} />
        ))}
      </Rows>
    </section>
  );
};

/** All that an issue says: what it needs and counts with, every point, its limits and their basis. */
export const IssuedDocument = ({ document }: { readonly document: Checklist }) => (
  <>
    <Around document={document} />
    {pageOrder(document).map(({ group, points }, at) => {
      const found = document.groups?.find((one) => one.id === group);
      const number = String(at + 1);
      return (
        <section key={group ?? ""}>
          <PlaceHeading
            number={number}
            title={found?.title ?? e(document.groups?.length ? "ed.loose" : "ed.points-only")}
            aside={
              found?.repeat
                ? repeatWords(document, found.repeat)
                : found?.groupAnswer && e("ed.group-answer")
            }
          />
          <Rows>
            {points.map((name, index) => {
              const point = document.properties[name];
              if (!point) return null;
              const limits = (point.limits ?? []).map(
                (limit) =>
                  limitSentence(document, point, limit) +
                  (limit.basis ? ` ${d("issued.because", { basis: limit.basis })}` : ""),
              );
              return (
                <Row
                  key={name}
                  number={`${number}.${index + 1}`}
                  name={point.title}
                  second={limits.length > 0 ? limits.join(" ") : undefined}
                  more={<span className="second">{askWords(document, point)}</span>}
                />
              );
            })}
          </Rows>
        </section>
      );
    })}
  </>
);
