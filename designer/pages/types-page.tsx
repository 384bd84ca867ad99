import { Empty, Loading, Row, Rows, TitleBlock, WordLink } from "@roundbook/runner/form";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { DeskPage } from "./desk-page.tsx";
import { useAssetTypes } from "./queries.ts";

export const TypesPage = () => {
  const [, navigate] = useLocation();
  const types = useAssetTypes();
  const add = (
    <WordLink href="/designer/asset-types/new" onFollow={() => navigate("/asset-types/new")}>
      {d("types.new")}
    </WordLink>
  );
  return (
    <DeskPage current="asset-types">
      <TitleBlock title={d("types.title")} actions={add} />
      {types.isPending && <Loading label={d("app.opening")} />}
      {types.data?.length === 0 && (
        <Empty sentence={d("types.empty")} actions={add}>
          <p>{d("types.empty-next")}</p>
        </Empty>
      )}
      <Rows>
        {types.data?.map((type) => (
          <Row
            key={type.assetType}
            number={String(type.version)}
            name={type.title}
            second={d("types.second", {
              particulars: Object.keys(type.particulars).length,
              checklists: type.checklists.length,
            })}
            href={`/designer/asset-types/${type.assetType}`}
            onFollow={() => navigate(`/asset-types/${type.assetType}`)}
          />
        ))}
      </Rows>
    </DeskPage>
  );
};
