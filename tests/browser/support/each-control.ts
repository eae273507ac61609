import type { PossessionDesk } from '../../../components/desk/desk.js';

/** Every control below a root that can be used now, shadow roots of other elements included. */
export function usable(root: ParentNode): HTMLElement[] {
  const found: HTMLElement[] = [];
  for (const element of root.querySelectorAll<HTMLElement>('*')) {
    if (
      element.matches('button, input, select, textarea, [role=option], form') &&
      !element.matches(':disabled, [aria-disabled=true], [type=file]')
    )
      found.push(element);
    if (element.shadowRoot) found.push(...usable(element.shadowRoot));
  }
  return found;
}

/** Uses a control as a person would who gives it some value. */
export function use(control: HTMLElement): void {
  const fire = (...types: string[]): void => {
    for (const type of types)
      control.dispatchEvent(new Event(type, { bubbles: true, composed: true, cancelable: true }));
  };
  if (control instanceof HTMLFormElement) {
    const submit = control.querySelector('button:not([type=button]):not(:disabled)');
    // Past what the browser asks of fields: what is typed is no matter here.
    if (submit) fire('submit');
  } else if (control instanceof HTMLSelectElement) {
    control.selectedIndex = (control.selectedIndex + 1) % Math.max(1, control.options.length);
    fire('input', 'change');
  } else if (control instanceof HTMLInputElement && ['checkbox', 'radio'].includes(control.type)) {
    control.click();
  } else if (control instanceof HTMLInputElement || control instanceof HTMLTextAreaElement) {
    control.value = control.getAttribute('type') === 'date' ? '2027-03-09' : '7';
    fire('input', 'change');
  } else if ((control as HTMLButtonElement).type !== 'submit') control.click();
}

/** Counts what is asked of a desk that would change its plan, and lets nothing of it be done. */
export function asksToChange(el: PossessionDesk): readonly string[] {
  const asked: string[] = [];
  el.change = (_changes, label) => void asked.push(label);
  el.mayChange = () => {
    asked.push('asked whether it may');
    return false;
  };
  return asked;
}
