import type { Checklist } from "@roundbook/schemas";
import { createRoot } from "react-dom/client";
import { ChecklistForm, Page } from "../../../runner/form/index.ts";
import { given, rootOf } from "./given.ts";

const checklist = given<Checklist>();
const nothing = () => undefined;

createRoot(rootOf()).render(
  <ChecklistForm
    document={checklist}
    particulars={{}}
    keepPhoto={async () => ({ sha256: "" })}
    photoUrl={async () => undefined}
    onAnswersChange={nothing}
    frame={({ page, dock }) => <Page dock={dock}>{page}</Page>}
  />,
);
