import {
  LeafWords,
  Loading,
  PlaceHeading,
  TitleBlock,
  WordButton,
  WordLink,
} from "@roundbook/runner/form";
import { type ReactNode, useState } from "react";
import { useLocation } from "wouter";
import { es } from "../messages/estate.ts";
import type { Uploaded } from "../model/mapping-fields.ts";
import { send } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { ImportMapping } from "./import-mapping.tsx";
import { useRefused } from "./use-refused.tsx";

/** A file of assets or of past results: read, mapped, tried, and only then brought in. */
export const ImportPage = () => {
  const [, navigate] = useLocation();
  const [file, setFile] = useState<Uploaded>();
  const [reading, setReading] = useState(false);
  const { refused, guard } = useRefused();
  const upload = (chosen: File | undefined) =>
    guard(async () => {
      if (!chosen) return;
      setReading(true);
      try {
        const reply = await send("/api/imports", {
          method: "POST",
          headers: { "content-type": "text/csv" },
          body: chosen,
        });
        setFile({ ...(await reply.json()), name: chosen.name });
      } finally {
        setReading(false);
      }
    });
  const page = (content: ReactNode, dock?: ReactNode) => (
    <DeskPage current="estate" dock={dock}>
      <TitleBlock
        title={es("import.title")}
        second={file?.name ?? es("import.second")}
        actions={
          <WordLink href="/designer/estate" onFollow={() => navigate("/estate")}>
            {es("estate.title")}
          </WordLink>
        }
      />
      {content}
    </DeskPage>
  );
  if (file) {
    return (
      <ImportMapping
        file={file}
        frame={(form, dock) =>
          page(
            <>
              <Sample file={file} />
              {form}
              <LeafWords>
                <WordButton quiet onClick={() => setFile(undefined)}>
                  {es("import.other")}
                </WordButton>
              </LeafWords>
            </>,
            dock,
          )
        }
      />
    );
  }
  return page(
    reading ? (
      <Loading label={es("import.reading")} />
    ) : (
      <LeafWords>
        <label className="file-choice">
          <span>{es("import.choose")}</span>
          <input
            type="file"
            accept=".csv,text/csv,text/plain"
            onChange={(event) => void upload(event.target.files?.[0])}
          />
        </label>
        <p className="second">{es("estate.import-about")}</p>
        {refused}
      </LeafWords>
    ),
  );
};

const delimiterWords = (delimiter: string): string => {
  switch (delimiter) {
    case ",":
      return es("import.commas");
    case ";":
      return es("import.semicolons");
    case "\t":
      return es("import.tabs");
    default:
      return delimiter;
  }
};

const Sample = ({ file }: { readonly file: Uploaded }) => (
  <section>
    <PlaceHeading
      title={es("import.sample")}
      aside={es("import.columns", {
        count: file.columns.length,
        delimiter: delimiterWords(file.delimiter),
      })}
    />
    {/* Scrolled sideways with the keyboard too. */}
    {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls has to take the focus */}
    <section className="sample" tabIndex={0} aria-label={es("import.sample")}>
      <table>
        <thead>
          <tr>
            {file.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {file.sample.slice(0, 5).map((line, at) => (
            // Lines of a file have no identity but their place.
            <tr key={at}>
              {file.columns.map((column, index) => (
                <td key={column}>{line[index]}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  </section>
);
