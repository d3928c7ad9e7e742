/** Hands a file to the user’s browser. */
export function download(name: string, data: Uint8Array<ArrayBuffer> | Blob | string, type: string): void {
  const address = URL.createObjectURL(new Blob([data], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file over once the click has been handled.
  setTimeout(() => {
    URL.revokeObjectURL(address);
  }, 60_000);
}
