/** A sentence or a title begins with a capital, whatever word it begins with. */
export function capital(text: string): string {
  return text.charAt(0).toLocaleUpperCase() + text.slice(1);
}
