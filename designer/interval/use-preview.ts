import type { Problem } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { Refusal, sendJson } from "../pages/client.ts";

const PAUSE_MS = 400;

/** A value once it has stood still for a moment. */
const useSettled = (value: string): string => {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
};

export interface Preview<Reply> {
  /** The last reply there was, of an older text while the newest is waited for or refused. */
  readonly reply: Reply | null;
  readonly waiting: boolean;
  /** The server could not be asked, or could not answer: not a fault of the text. */
  readonly failed: boolean;
  /** What the server found wrong with the newest text; pointers are into the definition. */
  readonly problems: readonly Problem[];
}

const NONE: readonly Problem[] = [];

/** What the server makes of a text that is being written; nothing is asked for null. */
export const usePreview = <Reply>(path: string, body: object | null): Preview<Reply> => {
  const text = JSON.stringify(body);
  const settled = useSettled(text);
  const asked = useQuery({
    queryKey: ["preview", path, settled],
    queryFn: () => sendJson<Reply>("POST", path, JSON.parse(settled)),
    enabled: settled !== "null",
    retry: false,
    staleTime: 60_000,
  });
  const last = useRef<Reply | null>(null);
  if (asked.data !== undefined) last.current = asked.data;
  const { error } = asked;
  const told = error instanceof Refusal && error.problems.length > 0;
  return {
    reply: last.current,
    failed: error !== null && !told && settled === text,
    waiting: asked.isFetching || settled !== text,
    problems:
      told && settled === text
        ? error.problems.map((one) => ({
            ...one,
            pointer: one.pointer.replace(/^\/definition(?=\/|$)/, ""),
          }))
        : NONE,
  };
};
