/** Question page. */
export default function Seen() {
  return null;
}
