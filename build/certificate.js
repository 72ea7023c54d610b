/** A certificate for https://localhost, made on this machine and for nothing else. */
import { createPrivateKey, X509Certificate } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { generate } from "selfsigned";

/** Milliseconds. */
const day = 86_400_000;
/** Browsers take certificates of a server for a little over a year at most. */
const validDays = 365;

/**
 * The certificate and its key in `folder`, made anew where there is none or it is about to end. It can
 * vouch for no other name and sign no other certificate, so trusting it opens no door.
 */
export async function localCertificate(folder, now = new Date()) {
  const files = {
    key: path.join(folder, "localhost.key"),
    cert: path.join(folder, "localhost.crt"),
  };
  const kept = standing(files, now);
  if (kept !== null) return { ...files, ...about(kept), isNew: false };
  const made = await generate([{ name: "commonName", value: "localhost" }], {
    keyType: "ec",
    curve: "P-256",
    algorithm: "sha256",
    notBeforeDate: now,
    notAfterDate: new Date(now.getTime() + validDays * day),
    extensions: [
      { name: "basicConstraints", cA: false, critical: true },
      { name: "keyUsage", digitalSignature: true, critical: true },
      { name: "extKeyUsage", serverAuth: true },
      {
        name: "subjectAltName",
        altNames: [
          { type: 2, value: "localhost" },
          { type: 7, ip: "127.0.0.1" },
          { type: 7, ip: "::1" },
        ],
      },
    ],
  });
  mkdirSync(folder, { recursive: true });
  writeFileSync(files.key, made.private, { mode: 0o600 });
  writeFileSync(files.cert, made.cert);
  return { ...files, ...about(new X509Certificate(made.cert)), isNew: true };
}

/** The certificate that is there, if it is good for another week and the key is its own. */
function standing({ key, cert }, now) {
  if (!existsSync(key) || !existsSync(cert)) return null;
  const certificate = new X509Certificate(readFileSync(cert));
  const isInTime =
    new Date(certificate.validFrom) <= now &&
    new Date(certificate.validTo).getTime() - now.getTime() > 7 * day;
  const isOurs =
    certificate.checkHost("localhost") !== undefined &&
    certificate.checkPrivateKey(createPrivateKey(readFileSync(key)));
  return isInTime && isOurs ? certificate : null;
}

/** `thumbprint`: the name by which Windows and macOS know it. */
const about = ({ fingerprint, validTo }) => ({
  thumbprint: fingerprint.replaceAll(":", ""),
  validTo: new Date(validTo),
});
