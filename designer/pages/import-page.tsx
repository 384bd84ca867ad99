import {
  LeafWords,
  Loading,
  PlaceHeading,
  TitleBlock,
  WordButton,
  WordLink,
} from "@roundbook/runner/form";
import { useState } from "react";
import { useLocation } from "wouter";
import { es } from "../messages/estate.ts";
import type { Uploaded } from "../model/mapping-fields.ts";
import { send } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { ImportMappingForm } from "./import-mapping.tsx";
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
  return (
    <DeskPage current="estate">
      <TitleBlock
        title={es("import.title")}
        second={file?.name ?? es("import.second")}
        actions={
          <WordLink href="/designer/estate" onFollow={() => navigate("/estate")}>
            {es("estate.title")}
          </WordLink>
        }
      />
      {reading && <Loading label={es("import.reading")} />}
      {!file && !reading && (
        <LeafWords>
          <label className="file-choice">
            <span>{es("import.choose")}</span>
            <input
              type="file"
              accept=".csv,text/csv,text/plain"
              onChange={(event) => void upload(event.target.files?.[0])}
            />
          </label>
          {refused}
        </LeafWords>
      )}
      {file && (
        <>
          <Sample file={file} />
          <ImportMappingForm file={file} />
          <LeafWords>
            <WordButton quiet onClick={() => setFile(undefined)}>
              {es("import.other")}
            </WordButton>
          </LeafWords>
        </>
      )}
    </DeskPage>
  );
};

const DELIMITERS: Record<string, string> = { "\t": "tabs" };

const Sample = ({ file }: { readonly file: Uploaded }) => (
  <section>
    <PlaceHeading
      title={es("import.sample")}
      aside={es("import.columns", {
        count: file.columns.length,
        delimiter: DELIMITERS[file.delimiter] ?? file.delimiter,
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
