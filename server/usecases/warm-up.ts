import { ENTRY_KINDS } from "@roundbook/schemas";
import { EXTENSION_LEAD } from "./demo/checklists/extension-lead.ts";
import { findProblems } from "./find-problems.ts";
import { NO_BLOCKS } from "./known-blocks.ts";
import { parseEntry } from "./parse-entry.ts";
import { passwordMatches } from "./passwords.ts";

const ID = "00000000-0000-7000-8000-000000000000";

/**
 * Compiles what is compiled at first use, before a person waits for it: validators take about half
 * a second in all. Nothing is read or written.
 */
export async function warmUp(): Promise<void> {
  await passwordMatches(undefined, "");
  findProblems(EXTENSION_LEAD, NO_BLOCKS);
  const head = { id: ID, asset: null, author: ID, device: ID, happenedAt: null };
  for (const kind of ENTRY_KINDS) parseEntry({ ...head, kind, civilDate: "2000-01-01", body: {} });
}
