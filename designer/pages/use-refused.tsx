import { useMessages } from "@roundbook/runner/form";
import type { Problem } from "@roundbook/schemas";
import { type ReactNode, useState } from "react";
import { d } from "../messages/desk.ts";
import { refusalWords } from "../messages/en-refusals.ts";
import { Refusal, Unreachable } from "./client.ts";

interface Refused {
  readonly refused: ReactNode;
  /** Runs something that asks the server; what it refuses is shown, faults of ours are thrown. */
  guard(work: () => Promise<void>): Promise<void>;
  readonly problems: readonly Problem[];
  /** From asking until the answer is shown: what is sent once is not sent again meanwhile. */
  readonly busy: boolean;
}

/**
 * What the server said no to, as a sentence beside the button that asked. `atField` shows a
 * problem at its own field and says whether it did; such a one is not said again.
 */
export const useRefused = (atField?: (problem: Problem) => boolean): Refused => {
  const { say } = useMessages();
  const [error, setError] = useState<Refusal | Unreachable>();
  const [elsewhere, setElsewhere] = useState<readonly Problem[]>([]);
  const [asking, setAsking] = useState(0);
  const guard = async (work: () => Promise<void>) => {
    setError(undefined);
    setAsking((count) => count + 1);
    try {
      await work();
    } catch (caught) {
      if (!(caught instanceof Refusal) && !(caught instanceof Unreachable)) throw caught;
      setError(caught);
      const told = caught instanceof Refusal ? caught.problems : [];
      setElsewhere(atField ? told.filter((problem) => atField(problem)) : []);
    } finally {
      setAsking((count) => count - 1);
    }
  };
  const problems = error instanceof Refusal ? error.problems : [];
  const here = problems.filter((problem) => !elsewhere.includes(problem));
  const refused = error && (problems.length === 0 || here.length > 0) && (
    <div role="alert" className="danger">
      {error instanceof Unreachable && <p>{d("app.away")}</p>}
      {error instanceof Refusal && problems.length === 0 && (
        <p>{refusalWords(error.code) ?? say({ code: error.code, params: {} })}</p>
      )}
      {here.map((problem) => (
        <p key={`${problem.pointer} ${problem.code}`}>
          {say(problem)} {problem.pointer !== "" && <span className="mono">{problem.pointer}</span>}
        </p>
      ))}
    </div>
  );
  return { refused, guard, problems, busy: asking > 0 };
};
