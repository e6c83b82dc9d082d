/** Something the next person at the sign-in must read: after going back to a backup everybody is signed out at once. */
const KEY = 'lightoff.sign-in-notice';

export function leaveSignInNotice(words: string): void {
  window.sessionStorage.setItem(KEY, words);
}

export function readSignInNotice(): string | null {
  return window.sessionStorage.getItem(KEY);
}

export function dropSignInNotice(): void {
  window.sessionStorage.removeItem(KEY);
}
