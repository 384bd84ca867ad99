import { createRoot } from "react-dom/client";
import { useForm } from "react-hook-form";
import { given, rootOf } from "./given.ts";
import type { PlainPoint, PlainSchema } from "./points.ts";

const schema = given<PlainSchema>();

const rules = (point: PlainPoint) =>
  point.type === "number" ? { required: true, min: point.minimum, max: point.maximum } : undefined;

/** Every input at once, each registered with its bounds. */
const Everything = () => {
  const { register, handleSubmit, formState } = useForm({ mode: "onChange" });
  const { errors } = formState;
  return (
    <form onSubmit={handleSubmit(() => undefined)}>
      {Object.entries(schema.properties).map(([name, point]) => (
        <p key={name}>
          <label htmlFor={name}>
            {point.title}{" "}
            {point.type === "number" ? (
              <input id={name} inputMode="decimal" {...register(name, rules(point))} />
            ) : (
              <select id={name} {...register(name)}>
                <option value="" />
                {point.enum.map((word) => (
                  <option key={word}>{word}</option>
                ))}
              </select>
            )}
          </label>
          {errors[name] && <em>Outside its bounds</em>}
        </p>
      ))}
      <button type="submit">Done</button>
    </form>
  );
};

createRoot(rootOf()).render(<Everything />);
