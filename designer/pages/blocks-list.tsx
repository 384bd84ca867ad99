import { LeafWords, PlaceHeading, Row, Rows } from "@roundbook/runner/form";
import type { BlockRow } from "@roundbook/schemas";
import { useState } from "react";
import { b } from "../messages/blocks.ts";
import { d } from "../messages/desk.ts";
import { BlockSheet } from "./block-sheet.tsx";
import { useBlocks } from "./queries.ts";

const usersOf = ({ usedBy }: BlockRow): string => {
  if (usedBy.length === 0) return b("list.unused");
  const titles = usedBy.map(({ title, issue }) =>
    issue === null ? b("list.draft", { title }) : b("list.issue", { title, issue }),
  );
  return b("list.used", { titles: titles.join(", ") });
};

/** Blocks of points with the checklists that take them in; nothing while there is none. */
export const BlocksList = () => {
  const rows = useBlocks().data;
  const [opened, setOpened] = useState<BlockRow | null>(null);
  if (!rows || rows.length === 0) return null;
  return (
    <section>
      <PlaceHeading title={b("list.title")} aside={String(rows.length)} />
      <LeafWords>
        <p className="second">{b("list.about")}</p>
      </LeafWords>
      <Rows label={b("list.title")}>
        {rows.map((row) => (
          <Row
            key={row.name}
            name={row.block.title}
            second={usersOf(row)}
            due={d("list.points", { count: Object.keys(row.block.points).length })}
            onPress={() => setOpened(row)}
          />
        ))}
      </Rows>
      {opened && <BlockSheet row={opened} onClose={() => setOpened(null)} />}
    </section>
  );
};
