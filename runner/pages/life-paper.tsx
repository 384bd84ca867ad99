import type { ChecklistRow } from "@roundbook/schemas";
import { LeafWords, WordLink, WordList } from "../form/index.ts";
import { paper } from "../messages/paper.ts";
import { useDevice } from "./device.tsx";

/** Ways to check an asset where there is no device: a sheet to print, and one to key in. */
export const PaperLinks = ({
  asset,
  issues,
  onFollow,
}: {
  readonly asset: string;
  readonly issues: readonly ChecklistRow[];
  readonly onFollow: (href: string) => void;
}) => {
  const { person } = useDevice();
  if (issues.length === 0 || person.role === "auditor") return null;
  return (
    <LeafWords>
      {issues.map(({ hash, document }) => (
        <p key={hash} className="second">
          {issues.length > 1 && `${document.title}: `}
          <WordList>
            <WordLink href={`/sheet/${hash}?asset=${asset}`} onFollow={onFollow}>
              {paper("paper.print")}
            </WordLink>
            <WordLink href={`/fill/${asset}/${hash}?paper`} onFollow={onFollow}>
              {paper("paper.key-in")}
            </WordLink>
          </WordList>
        </p>
      ))}
    </LeafWords>
  );
};
