import type { AssetRow, SiteBundle } from "@roundbook/schemas";
import { useState } from "react";
import { useForm } from "react-hook-form";
import { v7 } from "uuid";
import { useLocation } from "wouter";
import {
  Button,
  Buttons,
  ChoiceList,
  LeafWords,
  LineField,
  Page,
  SelectField,
  StateLine,
  TitleBlock,
  WordButton,
  WordLink,
} from "../form/index.ts";
import { add } from "../messages/add.ts";
import { book } from "../messages/book.ts";
import { keepCarried } from "../offline/carried.ts";
import {
  type KeptNumbers,
  type Proposal,
  proposeNumber,
  seriesOf,
} from "../offline/number-blocks.ts";
import { useDevice } from "./device.tsx";
import { newestIssue } from "./newest-issue.ts";
import { AssetPhotoField } from "./register-add-photo.tsx";
import { type AddFields, ParticularFields, particularsOf } from "./register-particulars.tsx";
import { suggestDescriptions } from "./register-suggest.ts";
import { useWrite } from "./use-write.ts";

export interface AddFormProps {
  readonly bundle: SiteBundle;
  /** Of every site that is kept: a number is looked for in all of them. */
  readonly bundles: readonly SiteBundle[];
  readonly kept: KeptNumbers;
  readonly claim: (leased: NonNullable<Proposal["leased"]>) => Promise<boolean>;
  /** What it begins with. */
  readonly fields: AddFields;
  /** The asset whose particulars those are. */
  readonly copied: AssetRow | undefined;
}

const keyOf = (number: string): string => number.trim().toLowerCase();

/** Assets in use by their numbers as looked up. */
const bearersOf = (bundles: readonly SiteBundle[]): ReadonlyMap<string, AssetRow> =>
  new Map(
    bundles
      .flatMap(({ assets }) => assets)
      .filter(({ status }) => status !== "retired")
      .map((asset) => [keyOf(asset.number), asset]),
  );

interface Added {
  readonly number: string;
  readonly particulars: Record<string, string>;
}

export const AddForm = ({ bundle, bundles, kept, claim, fields, copied }: AddFormProps) => {
  const { database } = useDevice();
  const [, navigate] = useLocation();
  const write = useWrite();
  const [last, setLast] = useState<Added | null>(null);
  const [photo, setPhoto] = useState<string | null>(null);
  const [copiedFrom, setCopiedFrom] = useState(copied?.number ?? null);
  const form = useForm<AddFields>({ defaultValues: fields });
  const { register, formState, watch } = form;
  const { errors, defaultValues } = formState;
  const [assetType, typed, written] = watch(["assetType", "description", "number"]);
  const type = bundle.assetTypes.find((one) => one.assetType === assetType);
  const bearers = bearersOf(bundles);
  const proposed = proposeNumber(
    bundle.site.id,
    seriesOf(bundle.assets, assetType),
    kept,
    (number) => bearers.has(keyOf(number)),
  );
  const carried = (field: "place" | "assetType" | "description", value: string | undefined) =>
    value !== "" && value === defaultValues?.[field];
  const issues = (type?.checklists ?? []).flatMap(
    (one) => newestIssue(bundle.checklists, one) ?? [],
  );
  const check = issues.length === 1 ? issues[0] : undefined;

  const submit = (open: boolean) =>
    form.handleSubmit(async (given) => {
      const own = given.number.trim();
      if (own === "" && proposed.leased && !(await claim(proposed.leased))) {
        form.setError("number", {
          message: add("add.number-gone", { number: proposed.number }),
        });
        return;
      }
      const number = own || proposed.number;
      const asset = v7();
      const description = given.description.trim();
      const serial = given.serial.trim();
      await write({
        made: {
          kind: "registered",
          body: {
            number,
            assetType: given.assetType,
            description,
            place: given.place,
            particulars: particularsOf(type?.particulars ?? {}, given.particulars),
            ...(serial ? { serial } : {}),
            ...(photo ? { photo } : {}),
          },
        },
        asset,
        contents: [],
        zone: bundle.site.zone,
        summary: { number, description, words: book("entry.registered"), overall: null },
      });
      const { place } = given;
      await keepCarried(database, bundle.site.id, {
        place,
        assetType: given.assetType,
        description,
      });
      if (open) {
        navigate(check ? `/fill/${asset}/${check.hash}` : `/asset/${asset}`);
        return;
      }
      setLast({ number, particulars: given.particulars });
      setPhoto(null);
      setCopiedFrom(null);
      // A particular that is only left out would stay on the page: each is emptied, since limits
      // follow from it.
      const particulars = Object.fromEntries(
        Object.keys(given.particulars).map((name) => [name, ""]),
      );
      form.reset({ ...given, description, number: "", serial: "", particulars });
      window.scrollTo(0, 0);
    });
  const copyLast = ({ number, particulars }: Added) => {
    for (const [name, value] of Object.entries(particulars))
      form.setValue(`particulars.${name}`, value);
    setCopiedFrom(number);
  };
  const needs = (what: string) => (value: string) =>
    value.trim() !== "" || add("add.needs", { what });
  const untouched = carried("description", typed);

  return (
    <Page
      dock={
        <Buttons>
          <Button
            kind="secondary"
            disabled={formState.isSubmitting}
            onClick={() => void submit(false)()}
          >
            {add("add.another")}
          </Button>
          <Button
            kind="primary"
            disabled={formState.isSubmitting}
            onClick={() => void submit(true)()}
          >
            {add(check ? "add.check" : "add.open")}
          </Button>
        </Buttons>
      }
    >
      <TitleBlock
        number={written.trim() || proposed.number}
        numberWritten
        title={add("add.title")}
        second={add(
          written.trim()
            ? "add.number-written"
            : proposed.leased
              ? "add.number-kept"
              : "add.number-free",
        )}
        actions={
          <WordLink href="/register" onFollow={navigate}>
            {add("add.leave")}
          </WordLink>
        }
        size="fill"
      />
      {(last || copiedFrom) && (
        <StateLine>
          {copiedFrom
            ? add("add.copied", { number: copiedFrom })
            : add("add.added", { number: last?.number ?? "" })}
        </StateLine>
      )}
      <LeafWords>
        {last && !copiedFrom && Object.values(last.particulars).some(Boolean) && (
          <WordButton onClick={() => copyLast(last)}>
            {add("add.copy", { number: last.number })}
          </WordButton>
        )}
        <form noValidate onSubmit={(event) => event.preventDefault()}>
          <SelectField
            label={add(carried("place", watch("place")) ? "add.place-carried" : "add.place")}
            none={add("add.choose")}
            options={bundle.places.map(({ id, name }) => ({ value: id, label: name }))}
            error={errors.place?.message}
            {...register("place", { validate: needs(add("add.place")) })}
          />
          <SelectField
            label={add(carried("assetType", assetType) ? "add.type-carried" : "add.type")}
            none={add("add.choose")}
            options={bundle.assetTypes.map((one) => ({ value: one.assetType, label: one.title }))}
            error={errors.assetType?.message}
            {...register("assetType", { validate: needs(add("add.type")) })}
          />
          <LineField
            label={add(untouched ? "add.description-carried" : "add.description")}
            autoComplete="off"
            maxLength={200}
            // What was carried forward is written over, not added to.
            onFocus={({ target }) => untouched && target.select()}
            error={errors.description?.message}
            {...register("description", { validate: needs(add("add.description")) })}
          />
          {assetType !== "" && (
            <ChoiceList
              label={add("add.description")}
              labelUnseen
              choices={suggestDescriptions(
                bundles.flatMap(({ assets }) => assets),
                untouched ? "" : typed,
                assetType,
              )
                .filter(({ text }) => text !== typed)
                .map((one) => ({
                  value: one.text,
                  label: one.text,
                  aside: add("add.here", { count: one.count }),
                }))}
              chosen={null}
              onChoose={(text) => form.setValue("description", text)}
            />
          )}
          {type && Object.keys(type.particulars).length > 0 && (
            <>
              <ParticularFields {...{ definitions: type.particulars, register, errors }} />
              <p className="second">{add("add.lacking")}</p>
            </>
          )}
          <LineField
            label={add("add.serial")}
            trail={watch("serial") === "" ? add("add.none") : undefined}
            autoComplete="off"
            maxLength={200}
            {...register("serial")}
          />
          <LineField
            label={add("add.number")}
            placeholder={proposed.number}
            autoComplete="off"
            maxLength={64}
            error={errors.number?.message}
            {...register("number", {
              validate: (number) => {
                const bearer = bearers.get(keyOf(number));
                return (
                  bearer === undefined ||
                  add("add.number-taken", {
                    number: number.trim(),
                    description: bearer.description,
                  })
                );
              },
            })}
          />
          <AssetPhotoField photo={photo} onPhoto={setPhoto} />
        </form>
      </LeafWords>
    </Page>
  );
};
