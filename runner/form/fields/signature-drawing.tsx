import { type PointerEvent, useEffect, useRef, useState } from "react";
import { Button, Buttons } from "../look/button.tsx";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import type { PhotoDoor } from "./field.ts";

export interface SignatureDrawingProps {
  keep: PhotoDoor["keepPhoto"];
  onKept(sha256: string): void;
  onClose(): void;
}

/** Dark on white whatever the page's ink: a kept picture has no page around it. */
const INK = "#46208c";
const PAPER = "#ffffff";
const PEN = 2.6;

const prepare = (canvas: HTMLCanvasElement): CanvasRenderingContext2D | null => {
  const context = canvas.getContext("2d");
  if (!context) return null;
  const { width, height } = canvas.getBoundingClientRect();
  const scale = Math.max(window.devicePixelRatio, 1);
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  context.scale(scale, scale);
  context.fillStyle = PAPER;
  context.fillRect(0, 0, width, height);
  context.strokeStyle = INK;
  context.lineWidth = PEN;
  context.lineCap = "round";
  context.lineJoin = "round";
  return context;
};

/** A line to sign on with finger, pen or mouse. Who cannot draw has signed by name already. */
export function SignatureDrawing({ keep, onKept, onClose }: SignatureDrawingProps) {
  const { t } = useMessages();
  const canvas = useRef<HTMLCanvasElement>(null);
  const pen = useRef<CanvasRenderingContext2D | null>(null);
  const [drawn, setDrawn] = useState(false);
  const [failed, setFailed] = useState(false);
  const clear = () => {
    if (canvas.current) pen.current = prepare(canvas.current);
    setDrawn(false);
  };
  useEffect(clear, []);

  const at = ({ clientX, clientY, currentTarget }: PointerEvent<HTMLCanvasElement>) => {
    const { left, top } = currentTarget.getBoundingClientRect();
    return [clientX - left, clientY - top] as const;
  };
  const down = (event: PointerEvent<HTMLCanvasElement>) => {
    event.currentTarget.setPointerCapture?.(event.pointerId);
    pen.current?.beginPath();
    pen.current?.moveTo(...at(event));
  };
  const move = (event: PointerEvent<HTMLCanvasElement>) => {
    if (event.buttons === 0) return;
    pen.current?.lineTo(...at(event));
    pen.current?.stroke();
    setDrawn(true);
  };
  const onKeep = () =>
    canvas.current?.toBlob((blob) => {
      if (blob === null) return setFailed(true);
      keep(blob).then(
        ({ sha256 }) => onKept(sha256),
        () => setFailed(true),
      );
    }, "image/png");

  return (
    <>
      <canvas
        ref={canvas}
        className="signing"
        role="img"
        aria-label={t("signature.drawing")}
        onPointerDown={down}
        onPointerMove={move}
      />
      <Buttons even>
        <Button onClick={clear} disabled={!drawn}>
          {t("signature.again")}
        </Button>
        <Button kind="primary" onClick={onKeep} disabled={!drawn}>
          {t("signature.keep")}
        </Button>
      </Buttons>
      <WordList>
        <WordButton quiet onClick={onClose}>
          {t("signature.without")}
        </WordButton>
      </WordList>
      {failed && (
        <p className="danger" role="alert">
          {t("photo.failed")}
        </p>
      )}
    </>
  );
}
