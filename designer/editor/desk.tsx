import type { Block, FormulaEngine } from "@roundbook/schemas";
import { createContext, type ReactNode, useContext } from "react";
import type { DraftDocument } from "../model/draft-document.ts";

/** The blank that is open on a page of sentences: one at a time. */
export interface Opening {
  readonly open: string | null;
  setOpen(id: string | null): void;
}

const OpeningContext = createContext<Opening | null>(null);
export const OpeningProvider = OpeningContext.Provider;

export const useOpening = (): Opening => {
  const opening = useContext(OpeningContext);
  if (!opening) throw new Error("useOpening outside OpeningProvider");
  return opening;
};

/** What every sentence of the editor works on. */
export interface EditorDesk extends Opening {
  readonly document: DraftDocument;
  /** The document with its blocks taken in: what is shown, tried and judged, and never edited. */
  readonly whole: DraftDocument;
  /** Every block there is to take in. */
  readonly blocks: readonly Block[];
  apply(next: DraftDocument, tag?: string): void;
  readonly engine: FormulaEngine | undefined;
  /** Asks for the formula engine, which is fetched once somebody writes a formula. */
  needEngine(): void;
  /** Names that any issue gave to points: never given to another point. */
  readonly retired: ReadonlySet<string>;
}

const DeskContext = createContext<EditorDesk | null>(null);
export const DeskProvider = ({
  value,
  children,
}: {
  readonly value: EditorDesk;
  readonly children: ReactNode;
}) => (
  <DeskContext value={value}>
    <OpeningProvider value={value}>{children}</OpeningProvider>
  </DeskContext>
);

export const useDesk = (): EditorDesk => {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error("useDesk outside DeskProvider");
  return desk;
};
