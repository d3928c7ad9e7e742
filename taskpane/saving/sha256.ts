/** Base64 of the SHA-256 of a text in UTF-8, as a policy names what may run (W3C, Content Security Policy Level 3). */
export async function sha256(text: string): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return btoa(String.fromCharCode(...new Uint8Array(digest)));
}
