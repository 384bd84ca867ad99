import type { AssetStatus } from "@roundbook/schemas";
import { useDeferredValue, useMemo, useState } from "react";
import { useLocation } from "wouter";
import {
  Empty,
  LeafWords,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  ScanLine,
  TitleBlock,
  unbroken,
  useWide,
  WordButton,
  WordLink,
  WordList,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { w } from "../messages/page.ts";
import { useWedge } from "../scan/use-wedge.ts";
import { useDevice } from "./device.tsx";
import { DueOf, todayAt } from "./due-of.tsx";
import { type FoundSite, markHits, searchRegister } from "./register-search.ts";
import { RunnerPage } from "./runner-page.tsx";
import { useBundles } from "./use-bundle.ts";

/** Rows drawn at once: a phone scrolls them without a stutter, and words narrow the rest down. */
const ROWS_SHOWN = 150;

const shorten = (sites: readonly FoundSite[]): { shown: FoundSite[]; hidden: number } => {
  let left = ROWS_SHOWN;
  let hidden = 0;
  const shown: FoundSite[] = [];
  for (const site of sites) {
    const found = site.found.slice(0, left);
    left -= found.length;
    hidden += site.found.length - found.length;
    if (found.length > 0) shown.push({ ...site, found });
  }
  return { shown, hidden };
};

const Marked = ({ text, words }: { readonly text: string; readonly words: string }) => (
  <>
    {markHits(unbroken(text), words).map((piece, at) =>
      // Pieces of one text have no identity but their place.
      piece.hit ? <mark key={at}>{piece.text}</mark> : <span key={at}>{piece.text}</span>,
    )}
  </>
);

const next = <T,>(values: readonly T[], current: T): T =>
  values[(values.indexOf(current) + 1) % values.length] as T;

export const RegisterPage = () => {
  const { now, settings, person } = useDevice();
  const [, navigate] = useLocation();
  const wide = useWide();
  const bundles = useBundles();
  const [words, setWords] = useState("");
  const [site, setSite] = useState<string | null>(null);
  const [status, setStatus] = useState<AssetStatus | null>(null);
  const asked = useDeferredValue(words);
  const kept = useMemo(() => bundles.data?.map((row) => row.bundle) ?? [], [bundles.data]);
  const found = useMemo(
    () => searchRegister(kept, { words: asked, site, status }),
    [kept, asked, site, status],
  );
  const { shown, hidden } = shorten(found);
  const total = kept.reduce((sum, bundle) => sum + bundle.assets.length, 0);
  const count = found.reduce((sum, one) => sum + one.found.length, 0);
  const statuses = [...new Set(kept.flatMap((bundle) => bundle.assets.map((one) => one.status)))];
  // A scanned number opens its asset whatever the words and filters are; an unknown one is looked for.
  useWedge(now, (code) => {
    const same = kept
      .flatMap((bundle) => bundle.assets)
      .filter((one) => one.number.toLowerCase() === code.toLowerCase());
    setWords(code);
    const only = same.length === 1 ? same[0] : undefined;
    if (only) navigate(`/asset/${only.id}`);
  });
  const scan = (
    <ScanLine
      margin={book("register.find")}
      placeholder={book("register.placeholder")}
      value={words}
      onChange={setWords}
      onSubmit={() => {
        const only = count === 1 ? found[0]?.found[0] : undefined;
        if (only) navigate(`/asset/${only.asset.id}`);
      }}
      inline={wide}
      leftHanded={settings.hand === "left"}
    />
  );
  return (
    <RunnerPage current="register" dock={wide ? undefined : scan}>
      <TitleBlock
        title={book("register.title")}
        second={book("register.count", { count: total })}
        actions={
          person.role === "auditor" ? undefined : (
            <WordLink href="/register/add" onFollow={navigate}>
              {book("register.add")}
            </WordLink>
          )
        }
      />
      {wide && scan}
      {bundles.isPending && <Loading label={book("register.loading")} />}
      {kept.length > 0 && (
        <LeafWords>
          <WordList>
            <WordButton
              onClick={() => setSite(next([null, ...kept.map((one) => one.site.id)], site))}
            >
              {kept.find((one) => one.site.id === site)?.site.name ?? book("register.all-sites")}
            </WordButton>
            {statuses.length > 1 && (
              <WordButton onClick={() => setStatus(next([null, ...statuses], status))}>
                {status ? w(`status.${status}`) : book("register.any-status")}
              </WordButton>
            )}
            {(asked !== "" || site !== null || status !== null) && (
              <span className="second">{book("register.found", { count })}</span>
            )}
          </WordList>
        </LeafWords>
      )}
      {shown.map((one) => (
        <section key={one.site}>
          <PlaceHeading title={one.name} aside={String(one.found.length)} />
          <Rows>
            {one.found.map(({ asset, due }) => (
              <Row
                key={asset.id}
                number={asset.number}
                name={<Marked text={asset.description} words={asked} />}
                second={asset.path.slice(1).join(" › ")}
                due={
                  <DueOf
                    asset={asset}
                    due={due}
                    today={todayAt(zoneOf(kept, one.site), now(), settings.clockOffset)}
                  />
                }
                href={`/asset/${asset.id}`}
                onFollow={navigate}
              />
            ))}
          </Rows>
        </section>
      ))}
      {hidden > 0 && <LeafWords>{book("register.more", { count: hidden })}</LeafWords>}
      {bundles.data && total === 0 && (
        <Empty
          sentence={book(settings.site === null ? "register.no-site" : "register.empty")}
          actions={
            settings.site === null ? (
              <WordLink href="/sites" onFollow={navigate}>
                {w("sites.choose")}
              </WordLink>
            ) : undefined
          }
        >
          {settings.site !== null && <p>{book("register.empty-next")}</p>}
        </Empty>
      )}
      {total > 0 && count === 0 && (
        <Empty sentence={book("register.none", { words: asked })}>
          <p>{book("register.none-next")}</p>
        </Empty>
      )}
    </RunnerPage>
  );
};

const zoneOf = (kept: readonly { site: { id: string; zone: string } }[], site: string): string =>
  kept.find((one) => one.site.id === site)?.site.zone ?? "UTC";
