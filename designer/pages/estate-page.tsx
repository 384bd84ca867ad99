import { PlaceHeading, Row, Rows, TitleBlock, WordLink } from "@roundbook/runner/form";
import { useLocation } from "wouter";
import { es } from "../messages/estate.ts";
import { DeskPage } from "./desk-page.tsx";
import { AddAsset } from "./estate-asset.tsx";
import { ClosedDays } from "./estate-closed.tsx";
import { Digest } from "./estate-digest.tsx";
import { Feeds } from "./estate-feeds.tsx";
import { People } from "./estate-people.tsx";
import { Places } from "./estate-places.tsx";
import { RoundsKept } from "./estate-rounds.tsx";
import { useAssetTypes, usePlaces } from "./queries.ts";

/** Where things stand, who writes in the book, and how assets come into it. */
export const EstatePage = () => {
  const [, navigate] = useLocation();
  const types = useAssetTypes().data;
  const places = usePlaces().data;
  return (
    <DeskPage current="estate">
      <TitleBlock
        title={es("estate.title")}
        second={es("estate.second")}
        actions={
          <WordLink href="/designer/estate/import" onFollow={() => navigate("/estate/import")}>
            {es("estate.import")}
          </WordLink>
        }
      />
      <Places />
      <ClosedDays />
      <section>
        <PlaceHeading title={es("estate.assets")} />
        <Rows>
          <Row
            name={es("estate.import")}
            second={es("estate.import-about")}
            href="/designer/estate/import"
            onFollow={() => navigate("/estate/import")}
          />
        </Rows>
        {types && places && <AddAsset {...{ types, places }} />}
      </section>
      <People />
      <RoundsKept />
      <Feeds />
      <Digest />
    </DeskPage>
  );
};
