/** Fits the manifest to the web server that the files will be on, and to the firm that serves them. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";

/** The address that manifest.xml is written with, for work on one's own machine. */
const ownOrigin = "https://localhost:3000";

/**
 * The manifest for the files at `url`, with the id `id`; what is not given stays as it is. An id is a
 * GUID, or `random` for a new one: a firm that serves its own copy gives it an id of its own.
 */
export async function hostedManifest(manifest, { url, id } = {}) {
  const placed = url === undefined ? manifest : withAddress(manifest, url);
  return id === undefined ? placed : await withId(placed, id);
}

function withAddress(manifest, url) {
  const address = new URL(url.endsWith("/") ? url : `${url}/`);
  if (address.protocol !== "https:") {
    throw new Error(`Excel takes add-ins from https addresses only, and not from ${url}.`);
  }
  return manifest
    .replaceAll(`${ownOrigin}/`, address.href)
    .replaceAll(`>${ownOrigin}<`, `>${address.origin}<`);
}

async function withId(manifest, id) {
  if (id !== "random" && !/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(id)) {
    throw new Error(`An add-in's id is a GUID, and not ${id}. Leave --env id out, or say random.`);
  }
  // Microsoft's own package changes files only, and not every Node can load it: only where it is needed.
  const { OfficeAddinManifest } = await import("office-addin-manifest");
  const folder = await mkdtemp(path.join(tmpdir(), "cribsheet-"));
  try {
    const file = path.join(folder, "manifest.xml");
    await writeFile(file, manifest);
    await OfficeAddinManifest.modifyManifestFile(file, id);
    return await readFile(file, "utf8");
  } finally {
    await rm(folder, { recursive: true });
  }
}
