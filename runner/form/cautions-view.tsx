import { LeafWords } from "./look/margin-block.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { useMessages } from "./messages/messages.tsx";

/** What must be read before the first point. */
export function CautionsView({ cautions }: { readonly cautions: readonly string[] }) {
  const { t } = useMessages();
  return (
    <>
      <PlaceHeading title={t("caution.title")} />
      <LeafWords>
        <ul className="cautions">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </LeafWords>
    </>
  );
}
