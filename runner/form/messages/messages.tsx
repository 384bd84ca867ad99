import type { Explanation } from "@roundbook/schemas";
import { createContext, type ReactNode, useContext } from "react";
import { ENGLISH, type MessageCode } from "./en.ts";
import { type Blanks, fillBlanks, type MessageMap, type MessageParams } from "./translate.ts";

type ParamsOf<Code extends MessageCode> = Readonly<
  Record<Blanks<(typeof ENGLISH)[Code]>, string | number>
>;

export interface Messages {
  /** The wording of a code of this catalogue; its parameters are checked by the compiler. */
  t<Code extends MessageCode>(
    code: Code,
    ...params: [Blanks<(typeof ENGLISH)[Code]>] extends [never] ? [] : [ParamsOf<Code>]
  ): string;
  /** The wording of a problem or an explanation: data, so a code may be newer than this catalogue. */
  say(what: Explanation): string;
  readonly has: (code: string) => code is MessageCode;
}

/** A second language is a map with the same codes. */
export function messagesOf(catalogue: MessageMap): Messages {
  const word = (code: string, params: MessageParams): string => {
    const message = Object.hasOwn(catalogue, code) ? catalogue[code] : undefined;
    return message === undefined
      ? fillBlanks(ENGLISH["code.unknown"], { code })
      : fillBlanks(message, params);
  };
  return {
    t: (code, ...[params]) => word(code, params ?? {}),
    say: ({ code, params }) => word(code, params),
    has: (code): code is MessageCode => Object.hasOwn(ENGLISH, code),
  };
}

export const english: Messages = messagesOf(ENGLISH);

const Spoken = createContext<Messages>(english);

export function MessagesProvider({
  messages,
  children,
}: {
  readonly messages: Messages;
  readonly children: ReactNode;
}) {
  return <Spoken value={messages}>{children}</Spoken>;
}

export const useMessages = (): Messages => useContext(Spoken);
