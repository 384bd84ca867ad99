import { useMemo, useState } from "react";
import { useForm } from "react-hook-form";
import { v7 } from "uuid";
import { useLocation } from "wouter";
import {
  Button,
  Buttons,
  ChoiceList,
  Empty,
  LeafWords,
  LineField,
  Page,
  SelectField,
  StateLine,
  TitleBlock,
  WordLink,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { useDevice } from "./device.tsx";
import { type AddFields, ParticularFields, particularsOf } from "./register-particulars.tsx";
import { nextNumber, suggestDescriptions } from "./register-suggest.ts";
import { useBundle } from "./use-bundle.ts";
import { useWrite } from "./use-write.ts";

const EMPTY = { description: "", serial: "", particulars: {} };

/** Registers assets one after another: place and type are carried forward, the number counts on. */
export const AddAssetPage = () => {
  const { settings } = useDevice();
  const [, navigate] = useLocation();
  const bundle = useBundle(settings.site).data?.bundle;
  const write = useWrite();
  const [added, setAdded] = useState<readonly string[]>([]);
  const numbers = useMemo(
    () => [...(bundle?.assets.map((asset) => asset.number) ?? []), ...added],
    [bundle, added],
  );
  const suggested = nextNumber(numbers);
  const form = useForm<AddFields>({
    defaultValues: { number: "", place: "", assetType: "", ...EMPTY },
  });
  const { register, formState, watch } = form;
  const { errors } = formState;
  const [assetType, typed] = watch(["assetType", "description"]);
  const type = bundle?.assetTypes.find((one) => one.assetType === assetType);
  const leave = (
    <WordLink href="/register" onFollow={navigate}>
      {book("add.leave")}
    </WordLink>
  );
  if (bundle && bundle.assetTypes.length === 0) {
    return (
      <Page>
        <TitleBlock title={book("add.title")} actions={leave} size="fill" />
        <Empty sentence={book("add.no-types")}>
          <p>{book("add.no-types-next")}</p>
        </Empty>
      </Page>
    );
  }
  const add = (open: boolean) =>
    form.handleSubmit(async (fields) => {
      if (!bundle) return;
      const number = fields.number.trim() || suggested;
      const asset = v7();
      const description = fields.description.trim();
      const serial = fields.serial.trim();
      await write({
        made: {
          kind: "registered",
          body: {
            number,
            assetType: fields.assetType,
            description,
            place: fields.place,
            particulars: particularsOf(type?.particulars ?? {}, fields.particulars),
            ...(serial ? { serial } : {}),
          },
        },
        asset,
        contents: [],
        zone: bundle.site.zone,
        summary: { number, description, words: book("entry.registered"), overall: null },
      });
      setAdded((before) => [...before, number]);
      if (open) navigate(`/asset/number:${encodeURIComponent(number)}`);
      else form.reset({ ...fields, number: "", ...EMPTY });
    });
  const taken = (number: string) =>
    bundle?.assets.find((asset) => asset.number === number.trim())?.description;
  const needs = (what: string) => (value: string) =>
    value.trim() !== "" || book("add.needs", { what });
  return (
    <Page
      dock={
        <Buttons>
          <Button
            kind="secondary"
            disabled={formState.isSubmitting}
            onClick={() => void add(false)()}
          >
            {book("add.another")}
          </Button>
          <Button kind="primary" disabled={formState.isSubmitting} onClick={() => void add(true)()}>
            {book("add.open")}
          </Button>
        </Buttons>
      }
    >
      <TitleBlock
        number={watch("number") || suggested}
        numberWritten
        title={book("add.title")}
        second={book("add.number-next", { number: suggested })}
        actions={leave}
        size="fill"
      />
      {added.length > 0 && (
        <StateLine>{book("add.added", { number: added.at(-1) ?? "" })}</StateLine>
      )}
      <LeafWords>
        <form noValidate onSubmit={(event) => event.preventDefault()}>
          <SelectField
            label={added.length > 0 ? book("add.place-carried") : book("add.place")}
            none={book("add.choose")}
            options={(bundle?.places ?? []).map((place) => ({
              value: place.id,
              label: place.name,
            }))}
            error={errors.place?.message}
            {...register("place", { validate: needs(book("add.place")) })}
          />
          <SelectField
            label={added.length > 0 ? book("add.type-carried") : book("add.type")}
            none={book("add.choose")}
            options={(bundle?.assetTypes ?? []).map((one) => ({
              value: one.assetType,
              label: one.title,
            }))}
            error={errors.assetType?.message}
            {...register("assetType", { validate: needs(book("add.type")) })}
          />
          <LineField
            label={book("add.description")}
            autoComplete="off"
            error={errors.description?.message}
            {...register("description", { validate: needs(book("add.description")) })}
          />
          {typed !== "" && (
            <ChoiceList
              label={book("add.description")}
              labelUnseen
              choices={suggestDescriptions(bundle?.assets ?? [], typed, assetType).map((one) => ({
                value: one.text,
                label: one.text,
                aside: book("add.here", { count: one.count }),
              }))}
              chosen={null}
              onChoose={(text) => form.setValue("description", text)}
            />
          )}
          {type && (
            <>
              <ParticularFields {...{ definitions: type.particulars, register, errors }} />
              <p className="second">{book("add.lacking")}</p>
            </>
          )}
          <LineField
            label={book("add.serial")}
            trail={book("add.optional")}
            autoComplete="off"
            {...register("serial")}
          />
          <LineField
            label={book("add.number")}
            placeholder={suggested}
            autoComplete="off"
            error={errors.number?.message}
            {...register("number", {
              validate: (number) => {
                const description = taken(number);
                return (
                  description === undefined ||
                  book("add.number-taken", { number: number.trim(), description })
                );
              },
            })}
          />
        </form>
      </LeafWords>
    </Page>
  );
};
