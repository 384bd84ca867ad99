import { AreaField, Blank, Button, LineField, Sentence, WordButton } from "@roundbook/runner/form";
import { type ReactNode, useEffect, useId, useRef, useState } from "react";
import { e } from "../messages/editor.ts";
import { useOpening } from "./desk.tsx";
import { useLeave } from "./use-leave.ts";

/** A blank that opens its editor under the sentence. */
export const OpenBlank = ({
  id,
  label,
  children,
}: {
  readonly id: string;
  readonly label?: string;
  readonly children: ReactNode;
}) => {
  const { open, setOpen } = useOpening();
  const isOpen = open === id;
  const spot = useRef<HTMLSpanElement>(null);
  const wasOpen = useRef(isOpen);
  useEffect(() => {
    // The focus went with the field that closed: it goes on from the blank.
    if (wasOpen.current && !isOpen && document.activeElement === document.body)
      spot.current?.querySelector<HTMLElement>("[tabindex]")?.focus({ preventScroll: true });
    wasOpen.current = isOpen;
  }, [isOpen]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a shortcut, not a control
    <span ref={spot} onKeyDown={(event) => isOpen && event.key === "Escape" && setOpen(null)}>
      <Blank expanded={isOpen} onPress={() => setOpen(isOpen ? null : id)} label={label}>
        {children}
      </Blank>
    </span>
  );
};

/** The editor of whichever of a sentence's blanks is open. */
export const useOpened = (editors: Readonly<Record<string, () => ReactNode>>): ReactNode => {
  const { open } = useOpening();
  return open !== null && Object.hasOwn(editors, open) ? (
    <InSight key={open}>{editors[open]?.()}</InSight>
  ) : undefined;
};

/** What opens comes into sight, above what is docked at the foot. */
const InSight = ({ children }: { readonly children: ReactNode }) => {
  const { setOpen } = useOpening();
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // Braces: some browsers give a promise back, and an effect may return only its undoing.
    ref.current?.scrollIntoView({ block: "nearest" });
  }, []);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a shortcut, not a control
    <div
      className="in-sight"
      ref={ref}
      onKeyDown={(event) => event.key === "Escape" && setOpen(null)}
    >
      {children}
    </div>
  );
};

/** A line of text; Enter or leaving it takes it over, an unreadable one stays with its error. */
export const TextEdit = ({
  label,
  help,
  value,
  many,
  mono,
  offered,
  onTake,
}: {
  readonly label: string;
  readonly help?: string;
  readonly value: string;
  /** Several lines. */
  readonly many?: boolean;
  readonly mono?: boolean;
  /** Words to choose from while typing. */
  readonly offered?: readonly string[];
  /** Gives back what is wrong with the text, or nothing when it was taken over. */
  readonly onTake: (text: string) => string | undefined;
}) => {
  const { setOpen } = useOpening();
  const [text, setText] = useState(value);
  const [error, setError] = useState<string>();
  const take = (): boolean => {
    const wrong = text === value ? undefined : onTake(text);
    setError(wrong);
    return wrong === undefined;
  };
  const close = () => take() && setOpen(null);
  const leave = useLeave(take);
  const list = useId();
  const shared = {
    label,
    help,
    error,
    value: text,
    autoFocus: true,
    onBlur: leave,
  };
  return (
    <div className={mono ? "blank-edit mono-edit" : "blank-edit"}>
      {many ? (
        <AreaField
          {...shared}
          rows={Math.min(12, text.split("\n").length + 1)}
          onChange={(event) => setText(event.target.value)}
        />
      ) : (
        <LineField
          {...shared}
          autoComplete="off"
          list={offered && list}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === "Enter") close();
            if (event.key === "Escape") setOpen(null);
          }}
        />
      )}
      {offered && (
        <datalist id={list}>
          {offered.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      )}
      <Button kind="secondary" onClick={close}>
        {e("ed.done")}
      </Button>
    </div>
  );
};

/** One of a few words. */
export const ChoiceEdit = <Value extends string>({
  label,
  choices,
  chosen,
  onChoose,
}: {
  readonly label: string;
  readonly choices: readonly { value: Value; label: string }[];
  readonly chosen: Value | null;
  readonly onChoose: (value: Value) => void;
}) => {
  const { setOpen } = useOpening();
  return (
    <fieldset className="blank-choices">
      <legend className="second">{label}</legend>
      {choices.map((choice) => (
        <WordButton
          key={choice.value}
          chosen={choice.value === chosen}
          onClick={() => {
            onChoose(choice.value);
            setOpen(null);
          }}
        >
          {choice.label}
        </WordButton>
      ))}
    </fieldset>
  );
};

/** Any of a few words. */
export const ManyEdit = <Value extends string>({
  label,
  choices,
  chosen,
  onChange,
}: {
  readonly label: string;
  readonly choices: readonly { value: Value; label: string }[];
  readonly chosen: readonly Value[];
  readonly onChange: (chosen: Value[]) => void;
}) => (
  <fieldset className="blank-choices">
    <legend className="second">{label}</legend>
    {choices.map(({ value, label: word }) => (
      <label key={value} className="desk-tick">
        <input
          type="checkbox"
          checked={chosen.includes(value)}
          onChange={(event) =>
            onChange(
              event.target.checked ? [...chosen, value] : chosen.filter((one) => one !== value),
            )
          }
        />
        <span>{word}</span>
      </label>
    ))}
  </fieldset>
);

/** A last line that adds another: its title is asked for in place. */
export const AddBlank = ({
  id,
  verb,
  before,
  word,
  label,
  onAdd,
}: {
  readonly id: string;
  readonly verb?: string;
  /** What is so as long as nothing was added. */
  readonly before?: string;
  readonly word: string;
  readonly label: string;
  readonly onAdd: (title: string) => void;
}) => {
  const { open, setOpen } = useOpening();
  return (
    <Sentence
      verb={verb}
      opened={
        open === id ? (
          <TextEdit
            label={label}
            value=""
            onTake={(text) => {
              if (text.trim() !== "") onAdd(text.trim());
              return undefined;
            }}
          />
        ) : undefined
      }
    >
      {before}{" "}
      <WordButton
        quiet
        aria-expanded={open === id}
        onClick={() => setOpen(open === id ? null : id)}
      >
        {word}
      </WordButton>
    </Sentence>
  );
};
