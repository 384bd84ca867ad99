import type { Context } from "hono";
import { getCookie, setCookie } from "hono/cookie";
import { SESSION_MS } from "../usecases/sign-in.ts";
import { isHttps } from "./headers.ts";

const NAME = "rb_session";

export const cookieToken = (c: Context): string => getCookie(c, NAME) ?? "";

const write = (c: Context, token: string, seconds: number) =>
  setCookie(c, NAME, token, {
    httpOnly: true,
    sameSite: "Strict",
    path: "/",
    maxAge: seconds,
    secure: isHttps(c.req.url, c.req.header("x-forwarded-proto")),
  });

export const giveCookie = (c: Context, token: string) => write(c, token, SESSION_MS / 1000);
export const dropCookie = (c: Context) => write(c, "", 0);
