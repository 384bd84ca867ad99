import { LeafWords, WordButton } from "@roundbook/runner/form";
import { useState } from "react";
import { useOpening } from "../editor/desk.tsx";
import { iv } from "../messages/intervals.ts";
import { asKind, RULE_KINDS } from "../model/interval-draft.ts";
import { useInterval, useParticulars } from "./interval-desk.tsx";

/** The kinds of interval in plain words, opened where another one is wanted. */
export const KindsList = () => {
  const { draft, apply, today } = useInterval();
  const { setOpen } = useOpening();
  const particulars = useParticulars();
  const [listed, setListed] = useState(false);
  if (!listed) {
    return (
      <LeafWords>
        <p>
          <WordButton onClick={() => setListed(true)}>{iv("page.kinds")}</WordButton>
        </p>
      </LeafWords>
    );
  }
  return (
    <LeafWords>
      <p className="second">{iv("l.kinds")}</p>
      <ul className="kinds-list">
        {RULE_KINDS.map((kind) => (
          <li key={kind}>
            <WordButton
              chosen={kind === draft.rule.kind}
              onClick={() => {
                setOpen(null);
                setListed(false);
                apply(asKind(draft, kind, { today, particulars }));
              }}
            >
              {iv(`kind.${kind}`)}
            </WordButton>
          </li>
        ))}
      </ul>
      <p>
        <WordButton quiet onClick={() => setListed(false)}>
          {iv("page.kinds-close")}
        </WordButton>
      </p>
    </LeafWords>
  );
};
