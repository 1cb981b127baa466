/** Saves text as a file of this device. */
export const saveText = (name: string, type: string, text: string): void =>
  saveFile(name, new Blob([text], { type: `${type};charset=utf-8` }));

/** Saves bytes as a file of this device. */
export function saveFile(name: string, content: Blob): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement("a");
  link.href = address;
  link.download = name.replace(/[^\w.-]+/g, "-");
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
