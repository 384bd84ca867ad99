import type { Block, FormulaEngine } from "@roundbook/schemas";
import { createContext, useContext } from "react";
import type { DraftDocument } from "../model/draft-document.ts";

/** What every sentence of the editor works on. */
export interface EditorDesk {
  readonly document: DraftDocument;
  /** The document with its blocks taken in: what is shown, tried and judged, and never edited. */
  readonly whole: DraftDocument;
  /** Every block there is to take in. */
  readonly blocks: readonly Block[];
  apply(next: DraftDocument, tag?: string): void;
  /** The blank that is open: one at a time. */
  readonly open: string | null;
  setOpen(id: string | null): void;
  readonly engine: FormulaEngine | undefined;
  /** Asks for the formula engine, which is fetched once somebody writes a formula. */
  needEngine(): void;
  /** Names that any issue gave to points: never given to another point. */
  readonly retired: ReadonlySet<string>;
}

const DeskContext = createContext<EditorDesk | null>(null);
export const DeskProvider = DeskContext.Provider;

export const useDesk = (): EditorDesk => {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error("useDesk outside DeskProvider");
  return desk;
};
