import {
  ADD_PERSON_SCHEMA,
  ADD_PLACE_SCHEMA,
  BODY_SCHEMAS,
  ENROL_DEVICE_SCHEMA,
  IMPORT_MAPPING_SCHEMA,
  ISSUE_DRAFT_SCHEMA,
  LEASE_NUMBERS_SCHEMA,
  NEW_DRAFT_SCHEMA,
  POST_ENTRIES_SCHEMA,
  RECEIVE_RESULT_SCHEMA,
  SAVE_ASSET_TYPE_SCHEMA,
  SAVE_BLOCK_SCHEMA,
  SAVE_DRAFT_SCHEMA,
  SETUP_SCHEMA,
  SIGN_IN_SCHEMA,
} from "@roundbook/schemas";
import { DUE_ROUTES } from "./due-route-table.ts";
import {
  CHANGES_QUERY,
  CHECKLISTS_QUERY,
  CURSOR_QUERY,
  DEFECTS_QUERY,
  ENTRIES_ENVELOPE,
  REGISTER_QUERY,
  SITE_HISTORY_QUERY,
  WITHDRAW_SCHEMA,
} from "./query-schemas.ts";
import { all, desk, deskVerb, READS_IT_ALL, type RouteRule, round } from "./route-rule.ts";

export type { Access, RouteRule } from "./route-rule.ts";

const MEGABYTE = 1024 * 1024;
export const DEFAULT_LIMIT = MEGABYTE;
/** A block is part of a checklist: what fills a whole one is none. */
const BLOCK_LIMIT = MEGABYTE / 4;
const ENTRIES_LIMIT = 4 * MEGABYTE;
export const EVIDENCE_LIMIT = 8 * MEGABYTE;
export const IMPORT_LIMIT = 1024 * MEGABYTE;

const REGISTER_BODY = {
  ...BODY_SCHEMAS.registered,
  properties: (({ source: _, photo: __, ...own }) => own)(BODY_SCHEMAS.registered.properties),
} as const;

/** Every route of the API with who may call it: the only place where access is decided. */
export const ROUTES = {
  ...DUE_ROUTES,
  "GET /api/session": { who: "anyone", says: "Who is signed in, and the server's clock" },
  "POST /api/setup": {
    who: "anyone",
    says: "Begin the estate with the one-time token",
    body: SETUP_SCHEMA,
    reply: 204,
  },
  "POST /api/session": { who: "anyone", says: "Sign in", body: SIGN_IN_SCHEMA, reply: 204 },
  "DELETE /api/session": { ...all, says: "Sign out", reply: 204 },
  "POST /api/devices": {
    ...round,
    atOnce: true,
    says: "Enrol a device's public key",
    body: ENROL_DEVICE_SCHEMA,
    reply: 204,
  },
  "POST /api/number-blocks": {
    ...round,
    says: "Lease a device asset numbers to give out without a network",
    body: LEASE_NUMBERS_SCHEMA,
  },
  "GET /api/people": { ...all, says: "People of the estate" },
  "POST /api/people": { ...deskVerb, says: "Add a person", body: ADD_PERSON_SCHEMA, reply: 201 },
  "GET /api/places": { ...all, says: "Places of the estate" },
  "POST /api/places": { ...deskVerb, says: "Add a place", body: ADD_PLACE_SCHEMA, reply: 201 },
  "GET /api/sites/:id/bundle": { ...all, says: "What a device needs for one site's round" },
  "GET /api/sites/:id/changes": {
    ...all,
    says: "What changed at a site since a device read it; null when it has to read it again",
    query: CHANGES_QUERY,
  },
  "GET /api/sites/:id/history": {
    ...all,
    says: "Entries about the assets of a site, in the order of the log",
    query: SITE_HISTORY_QUERY,
  },
  "GET /api/assets": { ...all, says: "The register", query: REGISTER_QUERY },
  "POST /api/assets": { ...deskVerb, says: "Register an asset", body: REGISTER_BODY, reply: 201 },
  "GET /api/assets/:id": { ...all, says: "One asset with its windows and defects" },
  "GET /api/assets/:id/history": {
    ...all,
    says: "An asset's entries, newest first",
    query: CURSOR_QUERY,
  },
  "GET /api/logbook": { ...all, says: "The logbook, newest first", query: CURSOR_QUERY },
  "GET /api/entries/:id": { ...all, says: "One entry" },
  "POST /api/entries": {
    ...round,
    says: "Seal entries of a device",
    body: POST_ENTRIES_SCHEMA,
    envelope: ENTRIES_ENVELOPE,
    limit: ENTRIES_LIMIT,
  },
  "POST /api/entries/:id/results": {
    ...round,
    atOnce: true,
    says: "Take in the result of a sample of an inspection",
    body: RECEIVE_RESULT_SCHEMA,
    reply: 201,
  },
  "PUT /api/evidence/:sha256": {
    ...round,
    says: "Store a photo under its hash",
    raw: ["image/jpeg", "image/png", "image/webp"],
    limit: EVIDENCE_LIMIT,
    reply: 204,
  },
  "GET /api/evidence/:sha256": { ...all, says: "A photo by its hash" },
  "GET /api/defects": { ...all, says: "Defects", query: DEFECTS_QUERY },
  "GET /api/checklists": {
    ...all,
    says: "Newest issue of every checklist, or every issue of one",
    query: CHECKLISTS_QUERY,
  },
  "GET /api/checklists/:hash": { ...all, says: "One issue by its hash" },
  "POST /api/checklists/:id/withdraw": {
    ...deskVerb,
    says: "Withdraw a checklist",
    body: WITHDRAW_SCHEMA,
    reply: 204,
  },
  "GET /api/drafts": { ...desk, says: "Drafts of checklists" },
  "POST /api/drafts": { ...desk, says: "Begin a draft", body: NEW_DRAFT_SCHEMA, reply: 201 },
  "GET /api/drafts/:checklist": { ...desk, says: "One draft" },
  "PUT /api/drafts/:checklist": {
    ...desk,
    says: "Save a draft over the revision read",
    body: SAVE_DRAFT_SCHEMA,
  },
  "DELETE /api/drafts/:checklist": { ...desk, says: "Throw a draft away", reply: 204 },
  "POST /api/drafts/:checklist/issue": {
    ...deskVerb,
    says: "Issue a draft",
    body: ISSUE_DRAFT_SCHEMA,
  },
  "GET /api/blocks": { ...desk, says: "Blocks of points, with the checklists that take them in" },
  "GET /api/blocks/:name": { ...desk, says: "One block of points" },
  "PUT /api/blocks/:name": {
    ...desk,
    says: "Save a block over the revision read",
    body: SAVE_BLOCK_SCHEMA,
    limit: BLOCK_LIMIT,
  },
  "DELETE /api/blocks/:name": {
    ...deskVerb,
    says: "Remove a block that no draft takes in",
    reply: 204,
  },
  "GET /api/asset-types": { ...all, says: "Asset types" },
  "PUT /api/asset-types/:name": {
    ...deskVerb,
    says: "Issue the version of an asset type that follows the one read",
    body: SAVE_ASSET_TYPE_SCHEMA,
  },
  "POST /api/imports": {
    ...desk,
    says: "Send a CSV file to import",
    raw: ["text/csv"],
    limit: IMPORT_LIMIT,
    reply: 201,
  },
  "POST /api/imports/:id/trial": {
    ...desk,
    says: "Report what an import would do",
    body: IMPORT_MAPPING_SCHEMA,
  },
  "POST /api/imports/:id/run": { ...desk, says: "Import", body: IMPORT_MAPPING_SCHEMA },
  "GET /api/export": { who: READS_IT_ALL, says: "The whole log, one entry a line" },
  "GET /api/openapi.json": { ...all, says: "This description" },
} as const satisfies Readonly<Record<string, RouteRule>>;

export type RouteKey = keyof typeof ROUTES;
export const ROUTE_KEYS = Object.keys(ROUTES) as readonly RouteKey[];

/** A key's two halves: its method and its path. */
export const splitKey = (key: RouteKey): { method: string; path: string } => {
  const [method = "", path = ""] = key.split(" ");
  return { method, path };
};
