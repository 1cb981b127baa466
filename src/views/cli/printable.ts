/** Words of a device that nobody vouches for, as a terminal may show them. */

/** Without signs that steer a terminal or turn the direction of reading: each becomes U+FFFD. */
export const printable = (line: string): string =>
  line.replace(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu, "\ufffd");
