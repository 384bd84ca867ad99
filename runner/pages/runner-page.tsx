import type { ReactNode } from "react";
import { useLocation } from "wouter";
import { Contents, Page, StateLine, WordLink } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { clockTime } from "./day-words.ts";
import { useDevice } from "./device.tsx";

type Chapter = "round" | "register" | "defects" | "logbook" | "device";

export interface RunnerPageProps {
  readonly current: Chapter;
  readonly dock?: ReactNode;
  readonly marginalia?: ReactNode;
  readonly children: ReactNode;
}

const HREF: Record<Chapter, string> = {
  round: "/",
  register: "/register",
  defects: "/defects",
  logbook: "/logbook",
  device: "/device",
};

/** A page of the book with its contents beside it, or docked under the thumb. */
export const RunnerPage = ({ current, dock, marginalia, children }: RunnerPageProps) => {
  const { person, estate, connection } = useDevice();
  const [, navigate] = useLocation();
  const chapters: Chapter[] = ["round", "register", "defects", "logbook", "device"];
  const manages = person.role === "owner" || person.role === "manager";
  return (
    <Page
      dock={dock}
      marginalia={marginalia}
      contents={
        <Contents
          label={w("app.contents")}
          brand={w("app.name")}
          beneath={<span>{estate.name}</span>}
          entries={chapters.map((chapter) => ({
            href: HREF[chapter],
            word: w(`app.${chapter}`),
            current: chapter === current,
            count:
              chapter === "device" && connection.waiting + connection.refused > 0
                ? String(connection.waiting + connection.refused)
                : undefined,
          }))}
          foot={
            <>
              <p>{person.name}</p>
              <p>{w("app.signed-in", { role: w(`role.${person.role}`) })}</p>
              {manages && (
                <p>
                  <WordLink href="/designer/" quiet>
                    {w("app.designer")}
                  </WordLink>
                </p>
              )}
            </>
          }
          onFollow={navigate}
        />
      }
    >
      {children}
    </Page>
  );
};

/** The only banner of a page: what keeps its entries from the server, and the way to mend it. */
export const ConnectionLine = () => {
  const { connection } = useDevice();
  const [, navigate] = useLocation();
  const { online, offlineSince, waiting, refused, sending, signedOut } = connection;
  if (signedOut) {
    return (
      <StateLine mark={waiting > 0 ? "waiting" : undefined}>
        {w("state.signed-out")} <WordLink href="/sign-in">{w("state.sign-in")}</WordLink>
      </StateLine>
    );
  }
  if (refused > 0) {
    return (
      <StateLine mark="refused">
        {w("state.refused", { count: refused })}{" "}
        <WordLink href="/device" onFollow={navigate}>
          {w("state.look")}
        </WordLink>
      </StateLine>
    );
  }
  if (!online && offlineSince !== null) {
    const time = clockTime(new Date(offlineSince).toISOString());
    return (
      <StateLine mark="waiting">
        {waiting > 0
          ? w("state.offline-waiting", { time, count: waiting })
          : w("state.offline", { time })}
      </StateLine>
    );
  }
  if (waiting === 0) return null;
  return (
    <StateLine mark={sending ? "sending" : "waiting"}>
      {sending ? w("state.sending", { count: waiting }) : w("state.waiting", { count: waiting })}
    </StateLine>
  );
};
