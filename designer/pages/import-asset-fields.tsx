import { FieldPair, printUnit, SelectField } from "@roundbook/runner/form";
import { type ParticularDefinitions, type PlaceRow, particularsInOrder } from "@roundbook/schemas";
import type { UseFormReturn } from "react-hook-form";
import { es } from "../messages/estate.ts";
import {
  type MappingFields,
  MOST_PLACES,
  placeColumns,
  type Uploaded,
} from "../model/mapping-fields.ts";

/** Which columns say what an asset is, where a line may make one. */
export const AssetFields = ({
  file,
  definitions,
  sites,
  form: { register, setValue, watch },
}: {
  readonly file: Uploaded;
  readonly definitions: ParticularDefinitions;
  readonly sites: readonly PlaceRow[];
  readonly form: UseFormReturn<MappingFields>;
}) => {
  const columns = file.columns.map((column) => ({ value: column, label: column }));
  const [site, place] = watch(["site", "place"]);
  // One line more than is chosen; below one site for all there is one place less.
  const chosen = place.findLastIndex((column) => column !== "") + 1;
  const shown = Math.min(chosen + 1, site === "" ? MOST_PLACES : MOST_PLACES - 1);
  return (
    <>
      <FieldPair>
        <SelectField
          label={es("import.description")}
          none={es("import.none")}
          options={columns}
          {...register("description")}
        />
        <SelectField
          label={es("import.serial")}
          none={es("import.none")}
          options={columns}
          {...register("serial")}
        />
      </FieldPair>
      <SelectField
        label={es("import.site")}
        help={es("import.place-help")}
        none={es("import.site-none")}
        options={sites.map(({ code, name }) => ({ value: code, label: `${code} ${name}` }))}
        {...register("site", {
          onChange: (event) => setValue("place", placeColumns(file, event.target.value)),
        })}
      />
      {Array.from({ length: Math.max(shown, chosen) }, (_, at) => (
        <SelectField
          // Places are told apart by how far down they lie.
          key={at}
          label={es(at > 0 ? "import.within" : site === "" ? "import.outermost" : "import.place")}
          none={es("import.none")}
          options={columns}
          {...register(`place.${at}`)}
        />
      ))}
      {particularsInOrder(definitions).map(([name, { title, unit }]) => (
        <SelectField
          key={name}
          label={title}
          help={unit && es("import.in-unit", { unit: printUnit(unit) })}
          none={es("import.none")}
          options={columns}
          {...register(`particulars.${name}`)}
        />
      ))}
    </>
  );
};
