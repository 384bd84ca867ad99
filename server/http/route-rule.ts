import { ROLES, type Role } from "@roundbook/schemas";

/** Who may call a route: nobody signed in is needed, or one of the roles. */
export type Access = "anyone" | readonly Role[];

export interface RouteRule {
  readonly who: Access;
  readonly says: string;
  /** Schema of the JSON body; none when the route takes no body or a raw one. */
  readonly body?: object;
  /** Checked instead of `body` where the parts are answered one by one. */
  readonly envelope?: object;
  /** Schema of the query parameters, all strings; none allowed without one. */
  readonly query?: object;
  /** Content types of a raw body. */
  readonly raw?: readonly string[];
  /** Largest body in bytes. */
  readonly limit?: number;
  /** Looks before it appends: one transaction (`atOnce`). */
  readonly atOnce?: boolean;
  /** Status of a success. */
  readonly reply?: 200 | 201 | 204;
}

const EVERY_ROLE = ROLES;
const ON_THE_ROUND = ["owner", "manager", "inspector"] as const;
const AT_THE_DESK = ["owner", "manager"] as const;
export const READS_IT_ALL = ["owner", "manager", "auditor"] as const;

export const desk = { who: AT_THE_DESK } as const;
export const deskVerb = { who: AT_THE_DESK, atOnce: true } as const;
export const all = { who: EVERY_ROLE } as const;
export const round = { who: ON_THE_ROUND } as const;
