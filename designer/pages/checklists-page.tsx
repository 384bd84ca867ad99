import {
  Button,
  dayAndMonth,
  Empty,
  LeafWords,
  LineField,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  TitleBlock,
} from "@roundbook/runner/form";
import type { ChecklistRow, DraftRow } from "@roundbook/schemas";
import { parseCivilDate } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useForm } from "react-hook-form";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { addGroup } from "../model/commands.ts";
import { emptyDocument } from "../model/draft-document.ts";
import { BlocksList } from "./blocks-list.tsx";
import { sendJson } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { useChecklists, useDrafts } from "./queries.ts";
import { StartersList } from "./starters-list.tsx";
import { useRefused } from "./use-refused.tsx";

export const printDay = (iso: string): string => {
  const day = parseCivilDate(iso.slice(0, 10));
  return day === undefined ? iso : dayAndMonth(day);
};

const NewChecklist = () => {
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  const form = useForm({ defaultValues: { title: "" } });
  const submit = form.handleSubmit(({ title }) =>
    guard(async () => {
      const document = addGroup(emptyDocument(title.trim()), d("list.first-group"));
      const draft = await sendJson<DraftRow>("POST", "/api/drafts", { document });
      await queries.invalidateQueries({ queryKey: ["drafts"] });
      navigate(`/draft/${draft.checklist}`);
    }),
  );
  return (
    <section>
      <PlaceHeading title={d("list.new")} />
      <form onSubmit={submit} noValidate>
        <LeafWords>
          <LineField
            label={d("list.new-title")}
            help={d("list.new-help")}
            autoComplete="off"
            error={form.formState.errors.title && d("field.needed")}
            {...form.register("title", { validate: (title) => title.trim() !== "" })}
          />
          {refused}
          <Button kind="primary" type="submit" disabled={form.formState.isSubmitting}>
            {d("list.new-go")}
          </Button>
        </LeafWords>
      </form>
    </section>
  );
};

const DraftLine = ({ draft }: { readonly draft: DraftRow }) => {
  const [, navigate] = useLocation();
  const { title, properties } = draft.document as { title?: string; properties?: object };
  return (
    <Row
      name={title || d("list.new")}
      second={
        draft.lastIssue > 0 ? d("list.draft-of", { issue: draft.lastIssue + 1 }) : d("list.first")
      }
      due={d("list.points", { count: Object.keys(properties ?? {}).length })}
      href={`/designer/draft/${draft.checklist}`}
      onFollow={() => navigate(`/draft/${draft.checklist}`)}
    />
  );
};

const IssuedLine = ({ row }: { readonly row: ChecklistRow }) => {
  const [, navigate] = useLocation();
  return (
    <Row
      number={String(row.issue)}
      name={row.document.title}
      second={
        row.status === "withdrawn"
          ? d("list.withdrawn")
          : d("list.since", { day: printDay(row.issuedOn) })
      }
      due={d("list.points", { count: Object.keys(row.document.properties).length })}
      href={`/designer/checklist/${row.hash}`}
      onFollow={() => navigate(`/checklist/${row.hash}`)}
    />
  );
};

/** Every checklist of the estate: drafts under work, and the newest issue of each. */
export const ChecklistsPage = () => {
  const issued = useChecklists();
  const drafts = useDrafts();
  const pending = issued.isPending || drafts.isPending;
  const none = issued.data?.length === 0 && drafts.data?.length === 0;
  return (
    <DeskPage current="checklists">
      <TitleBlock
        title={d("list.title")}
        second={d("list.second", {
          issued: issued.data?.length ?? 0,
          drafts: drafts.data?.length ?? 0,
        })}
      />
      {pending && <Loading label={d("app.opening")} />}
      {none && (
        <Empty sentence={d("list.empty")}>
          <p>{d("list.empty-next")}</p>
        </Empty>
      )}
      {drafts.data && drafts.data.length > 0 && (
        <section>
          <PlaceHeading title={d("list.drafts")} aside={String(drafts.data.length)} />
          <Rows>
            {drafts.data.map((draft) => (
              <DraftLine key={draft.checklist} draft={draft} />
            ))}
          </Rows>
        </section>
      )}
      {issued.data && issued.data.length > 0 && (
        <section>
          <PlaceHeading title={d("list.issued")} aside={String(issued.data.length)} />
          <Rows>
            {issued.data.map((row) => (
              <IssuedLine key={row.hash} row={row} />
            ))}
          </Rows>
        </section>
      )}
      <BlocksList />
      <NewChecklist />
      <StartersList />
    </DeskPage>
  );
};
