import { useState } from "react";
import { Button, Buttons } from "../look/button.tsx";
import { AreaField } from "../look/line-field.tsx";
import { Timer } from "../look/timer.tsx";
import { wallTime } from "../messages/instant-words.ts";
import { type Messages, useMessages } from "../messages/messages.tsx";
import { clockFigures, isEarly, isLate, type WaitRule } from "../model/wait.ts";
import type { Waited } from "./use-waited.ts";

export interface WaitClockProps {
  readonly waited: Waited;
  onStart(): void;
  onRead(): void;
  /** Read before the wait is over, with the words why, "" without any. */
  onReadEarly(why: string): void;
  /** Words that stand beside the answer already. */
  readonly note: string;
}

/** The wait before a reading: started, running, read. Reading early is never barred, only asked about. */
export function WaitClock({ waited, onStart, onRead, onReadEarly, note }: WaitClockProps) {
  const { t } = useMessages();
  const [asking, setAsking] = useState(false);
  const { rule, wait, seconds } = waited;
  if (wait === undefined) {
    return (
      <>
        <p>{waitWords(t, rule)}</p>
        <Buttons>
          <Button kind="primary" onClick={onStart}>
            {t("wait.start")}
          </Button>
        </Buttons>
      </>
    );
  }
  const total = rule.atLeast ?? rule.atMost ?? 0;
  const early = isEarly(rule, seconds);
  const since = wallTime(wait.startedAt, true);
  const read = wait.readAt !== undefined;
  return (
    <>
      <Timer
        elapsed={seconds}
        total={total}
        figures={clockFigures(seconds)}
        label={t("wait.label")}
        caption={captionWords(t, waited, since)}
      />
      {read && early && (
        <p className="danger" role="status">
          {t("wait.early", { from: clockFigures(rule.atLeast ?? 0) })}
        </p>
      )}
      {isLate(rule, seconds) && (
        <p className="danger" role="status">
          {t("wait.late", { to: clockFigures(rule.atMost ?? 0) })}
        </p>
      )}
      {asking && early && !read ? (
        <EarlyAsk
          from={clockFigures(total)}
          note={note}
          onRead={(why) => {
            setAsking(false);
            onReadEarly(why);
          }}
          onWait={() => setAsking(false)}
        />
      ) : (
        <Buttons even>
          <Button onClick={onStart}>{t("wait.again")}</Button>
          {!read && (
            <Button
              kind={early ? "secondary" : "primary"}
              onClick={early ? () => setAsking(true) : onRead}
            >
              {t(early ? "wait.read-early" : "wait.read")}
            </Button>
          )}
        </Buttons>
      )}
    </>
  );
}

/** What reading early comes to, and why it is done: asked, and never a bar. */
function EarlyAsk({
  from,
  note,
  onRead,
  onWait,
}: {
  readonly from: string;
  readonly note: string;
  onRead(why: string): void;
  onWait(): void;
}) {
  const { t } = useMessages();
  const [why, setWhy] = useState(note);
  return (
    <>
      <p role="status">{t("wait.early-asks", { from })}</p>
      <AreaField
        label={t("wait.early-why")}
        autoFocus
        value={why}
        maxLength={4000}
        onChange={({ target }) => setWhy(target.value)}
      />
      <Buttons even>
        <Button onClick={onWait}>{t("wait.go-on")}</Button>
        <Button onClick={() => onRead(why)}>{t("wait.early-sure")}</Button>
      </Buttons>
    </>
  );
}

/** "of 0:10, read by 0:12, since 11:06:18": the upper bound stands there from the start. */
function captionWords(t: Messages["t"], { rule, wait }: Waited, since: string): string {
  const { atLeast, atMost } = rule;
  const total = clockFigures(atLeast ?? atMost ?? 0);
  if (wait?.readAt !== undefined) return t("wait.read-after", { total, since });
  if (atMost === undefined) return t("wait.of", { total, since });
  const by = clockFigures(atMost);
  return atLeast === undefined
    ? t("wait.by", { by, since })
    : t("wait.of-by", { total, by, since });
}

/** "Read between 1:00 and 2:00 after the start." */
export function waitWords(t: Messages["t"], { atLeast, atMost }: WaitRule): string {
  const from = clockFigures(atLeast ?? 0);
  if (atMost === undefined) return t("wait.from", { from });
  const to = clockFigures(atMost);
  return atLeast === undefined ? t("wait.to", { to }) : t("wait.between", { from, to });
}
