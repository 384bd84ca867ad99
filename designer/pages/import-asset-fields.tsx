import { FieldPair, LineField, SelectField } from "@roundbook/runner/form";
import type { AssetTypeRow, PlaceRow } from "@roundbook/schemas";
import { particularsInOrder } from "@roundbook/schemas";
import type { UseFormReturn } from "react-hook-form";
import { es } from "../messages/estate.ts";
import type { MappingFields, Uploaded } from "../model/mapping-fields.ts";

/** Which columns say what an asset is, where a line may make one. */
export const AssetFields = ({
  file,
  type,
  sites,
  form: { register },
}: {
  readonly file: Uploaded;
  readonly type: AssetTypeRow | undefined;
  readonly sites: readonly PlaceRow[];
  readonly form: UseFormReturn<MappingFields>;
}) => {
  const columns = file.columns.map((column) => ({ value: column, label: column }));
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
      <FieldPair>
        <SelectField
          label={es("import.site")}
          none={es("import.site-none")}
          options={sites.map((site) => ({ value: site.name, label: site.name }))}
          {...register("site")}
        />
        <LineField
          label={es("import.place")}
          help={es("import.place-help")}
          autoComplete="off"
          {...register("place")}
        />
      </FieldPair>
      {particularsInOrder(type?.particulars ?? {}).map(([name, { title }]) => (
        <SelectField
          key={name}
          label={title}
          none={es("import.none")}
          options={columns}
          {...register(`particulars.${name}`)}
        />
      ))}
    </>
  );
};
