import { hash, verify } from "@node-rs/argon2";

// Argon2id (the library's default kind), with the memory and passes OWASP gives as its minimum.
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export const hashPassword = (password: string): Promise<string> => hash(password, COST);

let stranger: Promise<string> | undefined;

/** Takes as long when there is no such sign-in, so that time does not tell which names exist. */
export async function passwordMatches(
  stored: string | undefined,
  password: string,
): Promise<boolean> {
  stranger ??= hashPassword("nobody signs in with this");
  const matches = await verify(stored ?? (await stranger), password);
  return stored !== undefined && matches;
}
