/** Hands a file to the user’s browser. Whether it arrives is not to be seen from here. */
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

/** What can be said once a file is handed over. */
export function handedOver(name: string): string {
  return `The file ${name} is handed to your browser, which keeps it among its downloads or asks you where to.`;
}
