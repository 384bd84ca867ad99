import { WordButton } from "@roundbook/runner/form";
import type { BlockRow } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { b } from "../messages/blocks.ts";
import { canBecomeBlock, groupAsBlock } from "../model/include-edit.ts";
import { sendJson } from "../pages/client.ts";
import { useRefused } from "../pages/use-refused.tsx";
import { useDesk } from "./desk.tsx";

/** Keeps a group as a block first, and only then takes it in: what is refused changes nothing. */
export const KeepAsBlock = ({ group }: { readonly group: string }) => {
  const { document, apply, blocks, setOpen } = useDesk();
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  if (!canBecomeBlock(document, group)) return null;
  const keep = () =>
    guard(async () => {
      const made = groupAsBlock(document, group, new Set(blocks.map(({ name }) => name)));
      if (!made) return;
      await sendJson<BlockRow>("PUT", `/api/blocks/${made.block.name}`, {
        revision: 0,
        block: made.block,
      });
      await queries.invalidateQueries({ queryKey: ["blocks"] });
      setOpen(null);
      apply(made.document);
    });
  return (
    <>
      <p>
        <WordButton onClick={() => void keep()}>{b("group.keep")}</WordButton>
      </p>
      <p className="second">{b("group.keep-about")}</p>
      {refused}
    </>
  );
};
