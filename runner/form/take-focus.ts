/**
 * Gives a field the focus, so that keys reach it; not while somebody works outside the form, so
 * that a trial beside a page never takes the hand from what is being written there.
 */
export function takeFocus(element: HTMLElement): void {
  const { activeElement, body } = element.ownerDocument;
  const elsewhere =
    activeElement !== null &&
    activeElement !== body &&
    activeElement.closest(".form-keys") === null;
  if (!elsewhere) element.focus({ preventScroll: true });
}
