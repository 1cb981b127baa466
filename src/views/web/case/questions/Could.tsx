/** Question page. */
export default function Could() {
  return null;
}
