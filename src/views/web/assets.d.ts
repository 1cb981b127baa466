/** What the builder turns into files of the page. */
/// <reference types="vite-plugin-pwa/vanillajs" />
declare module "*.css";
declare module "*?url" {
  const address: string;
  export default address;
}
