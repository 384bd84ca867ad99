import type { FromSchema } from "json-schema-to-ts";
import { UUID } from "../shared/patterns.ts";

export const ROLES = ["owner", "manager", "inspector", "auditor"] as const;
export type Role = (typeof ROLES)[number];

const label = { type: "string", minLength: 1, maxLength: 200 } as const;
const password = { type: "string", minLength: 10, maxLength: 200 } as const;
const signInName = { type: "string", pattern: "^[a-z0-9][a-z0-9._@+-]{1,99}$" } as const;

/** POST /api/setup: works once, with the one-time token the server printed. */
export const SETUP_SCHEMA = {
  type: "object",
  properties: {
    token: { type: "string", minLength: 20, maxLength: 200 },
    /** `demo` opens the invented estate; its people share the password given here. */
    mode: { enum: ["own", "demo"] },
    estate: label,
    zone: label,
    name: label,
    signIn: signInName,
    password,
  },
  required: ["token", "mode", "name", "signIn", "password"],
  additionalProperties: false,
} as const;
export type Setup = FromSchema<typeof SETUP_SCHEMA>;

/** POST /api/session */
export const SIGN_IN_SCHEMA = {
  type: "object",
  properties: { signIn: signInName, password: { type: "string", minLength: 1, maxLength: 200 } },
  required: ["signIn", "password"],
  additionalProperties: false,
} as const;
export type SignIn = FromSchema<typeof SIGN_IN_SCHEMA>;

/** POST /api/people (owner, manager) */
export const ADD_PERSON_SCHEMA = {
  type: "object",
  properties: { name: label, role: { enum: ROLES }, signIn: signInName, password },
  required: ["name", "role", "signIn", "password"],
  additionalProperties: false,
} as const;
export type AddPerson = FromSchema<typeof ADD_PERSON_SCHEMA>;

/** POST /api/devices: a device enrols the public half of a key it cannot export. */
export const ENROL_DEVICE_SCHEMA = {
  type: "object",
  properties: {
    device: { type: "string", pattern: UUID },
    /** ECDSA P-256 public key, uncompressed point, base64url (87 characters). */
    key: { type: "string", pattern: "^[A-Za-z0-9_-]{87}$" },
    label,
  },
  required: ["device", "key", "label"],
  additionalProperties: false,
} as const;
export type EnrolDevice = FromSchema<typeof ENROL_DEVICE_SCHEMA>;

/** GET /api/session */
export interface SessionReply {
  /** True until the first owner exists. */
  readonly empty: boolean;
  readonly estate: { readonly id: string; readonly name: string } | null;
  readonly person: { readonly id: string; readonly name: string; readonly role: Role } | null;
  /** Server clock, RFC 3339: devices keep their offset from it. */
  readonly now: string;
}
