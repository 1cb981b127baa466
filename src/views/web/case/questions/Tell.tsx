/** Question page. */
export default function Tell() {
  return null;
}
