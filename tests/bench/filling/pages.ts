import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { issueDocument } from "@roundbook/schemas";
import { type BuiltPage, buildPage } from "./build-page.ts";
import { checklistWith, type PlainSchema, plainSchemaOf } from "./points.ts";

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'";

export const PAGES = ["own", "hook-form", "schema-form", "plain"] as const;
export type PageName = (typeof PAGES)[number];

const plainInputs = ({ properties }: PlainSchema): string =>
  Object.entries(properties)
    .map(([name, point]) => {
      const input =
        point.type === "number"
          ? `<input inputmode="decimal" name="${name}">`
          : `<select name="${name}"><option></option>${point.enum.map((word) => `<option>${word}</option>`).join("")}</select>`;
      return `<p><label>${point.title} ${input}</label></p>`;
    })
    .join("");

const html = (head: string, body: string): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Bench</title><link rel="icon" href="data:,"><meta name="viewport" content="width=device-width">${head}</head><body>${body}</body></html>`;

export interface ServedPages {
  readonly origin: string;
  address(name: PageName, points: number): string;
  close(): void;
}

/**
 * The pages under the policy of the apps, each with the checklist of each size. All have the style
 * sheet and the type of this form, so that what differs is how they are filled.
 */
export async function servePages(root: string, sizes: readonly number[]): Promise<ServedPages> {
  const look = await buildPage(root, "look-page.ts", "/look/");
  const own = await buildPage(root, "own-page.tsx", "/own/");
  const hookForm = await buildPage(root, "hook-form-page.tsx", "/hook-form/");
  const answers = new Map<string, string>();
  const built: BuiltPage[] = [look, own, hookForm];
  for (const points of sizes) {
    const checklist = checklistWith(points);
    const plain = plainSchemaOf(checklist);
    const schemaForm = await buildPage(
      root,
      "schema-form-page.tsx",
      `/schema-form/${points}/`,
      plain,
    );
    built.push(schemaForm);
    const page = ({ head }: BuiltPage, given: object) => {
      const data = JSON.stringify(given).replaceAll("<", "\\u003c");
      const body = `<div id="root"></div><script type="application/json" id="document">${data}</script>`;
      return html(look.head + head, body);
    };
    answers.set(`/${points}/own`, page(own, issueDocument(checklist)));
    answers.set(`/${points}/hook-form`, page(hookForm, plain));
    answers.set(`/${points}/schema-form`, page(schemaForm, plain));
    answers.set(`/${points}/plain`, html(look.head, `<form>${plainInputs(plain)}</form>`));
  }
  const files = new Map(built.flatMap((one) => [...one.files]));
  const server = createServer(({ url = "/" }, response) => {
    const file = files.get(url);
    response.setHeader("content-security-policy", POLICY);
    response.setHeader("content-type", file?.type ?? "text/html; charset=utf-8");
    response.end(file?.body ?? answers.get(url) ?? html("", ""));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    origin,
    address: (name, points) => `${origin}/${points}/${name}`,
    close: () => server.close(),
  };
}
