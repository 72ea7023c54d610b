/** Fits the manifest to the web server that the files will be on. */

/** The address that manifest.xml is written with, for work on one's own machine. */
const ownAddress = "https://localhost:3000/";

/** The manifest for the files at `url`; without one it stays as it is. */
export function hostedManifest(manifest, url) {
  if (url === undefined) return manifest;
  const address = new URL(url.endsWith("/") ? url : `${url}/`);
  if (address.protocol !== "https:") {
    throw new Error(`Excel takes add-ins from https addresses only, and not from ${url}.`);
  }
  return manifest.replaceAll(ownAddress, address.href);
}
