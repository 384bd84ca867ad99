import { useMessages } from "@roundbook/runner/form";
import type { Problem } from "@roundbook/schemas";
import type { FieldValues, Path, UseFormReturn } from "react-hook-form";
import { useRefused } from "./use-refused.tsx";

/** "/particulars/length" as the form names that field, when it has it. */
const fieldAt = (pointer: string, fields: readonly string[]): string | undefined => {
  const steps = pointer.split("/").slice(1);
  return fields.includes(steps[0] ?? "") ? steps.join(".") : undefined;
};

/**
 * What the server said no to: at its field where it names one, else beside the button. `named`
 * gives the field of a pointer that the form calls otherwise.
 */
export const useFormRefused = <Fields extends FieldValues>(
  form: UseFormReturn<Fields>,
  named: Readonly<Record<string, string>> = {},
) => {
  const { say } = useMessages();
  return useRefused((problem: Problem) => {
    const { pointer } = problem;
    const field = named[pointer] ?? fieldAt(pointer, Object.keys(form.getValues()));
    if (field === undefined) return false;
    form.setError(
      field as Path<Fields>,
      { type: "server", message: say(problem) },
      {
        shouldFocus: true,
      },
    );
    return true;
  });
};
