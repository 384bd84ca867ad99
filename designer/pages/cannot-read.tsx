import { Empty, useMessages, WordButton } from "@roundbook/runner/form";
import { d } from "../messages/desk.ts";
import { refusalWords } from "../messages/en-refusals.ts";
import { Refusal } from "./client.ts";

/** In place of what could not be read: the server said no, or did not answer. */
export const CannotRead = ({ error, onAgain }: { readonly error: Error; onAgain(): void }) => {
  const { say } = useMessages();
  const sentence =
    error instanceof Refusal
      ? (refusalWords(error.code) ?? say({ code: error.code, params: {} }))
      : d("app.away");
  return (
    <Empty
      sentence={sentence}
      actions={<WordButton onClick={onAgain}>{d("app.again")}</WordButton>}
    />
  );
};
