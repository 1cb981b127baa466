/** A sentence whose weighted words stand between two pairs of asterisks. */

export function Rich({ text }: { readonly text: string }) {
  return text.split("**").map((part, index) =>
    index % 2 === 1 ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: parts of one sentence never change places
      <b key={index}>{part}</b>
    ) : (
      part
    ),
  );
}
