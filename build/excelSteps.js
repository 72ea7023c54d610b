/** How a person adds the add-in to Excel, in words. */

/**
 * All steps as text, this machine's first. `thumbprint` and `cert` are the certificate's, `isNew`
 * whether it was made just now.
 */
export function addingSteps({ manifest, address, platform, cert, thumbprint, validTo, isNew }) {
  const trust = trusting({ cert, thumbprint });
  const own = trust[platform] ?? trust.linux;
  return [
    isNew
      ? `Made a certificate for localhost, good until ${dayOf(validTo)}: ${cert}`
      : `Using the certificate of before, good until ${dayOf(validTo)}: ${cert}`,
    "It vouches for localhost only. Excel shows the pane once this machine trusts it.",
    "",
    "1. Trust it (once):",
    ...indent(own.trust),
    "   To take that back later:",
    ...indent(own.forget),
    `   Check: open ${address}/taskpane.html in your browser. It must not warn.`,
    "",
    "2. Leave this running, and add the manifest to Excel:",
    `   ${manifest}`,
    "",
    ...windows(manifest),
    "",
    ...mac(manifest),
    "",
    ...web(),
    "",
    "3. On the Home tab, choose Cribsheet. When the code changes, close the pane and open it again.",
    "   To remove it: take the manifest away again, and restart Excel.",
    "",
  ].join("\n");
}

const indent = (lines) => lines.map((line) => `     ${line}`);

const dayOf = (date) => date.toISOString().slice(0, 10);

function trusting({ cert, thumbprint }) {
  return {
    win32: {
      trust: [`Import-Certificate -FilePath "${cert}" -CertStoreLocation Cert:\\CurrentUser\\Root`],
      forget: [`Remove-Item Cert:\\CurrentUser\\Root\\${thumbprint}`],
    },
    darwin: {
      trust: [
        `security add-trusted-cert -r trustRoot -p ssl -k ~/Library/Keychains/login.keychain-db "${cert}"`,
      ],
      forget: [`security delete-certificate -Z ${thumbprint}`],
    },
    linux: {
      trust: [
        "Excel runs here in the browser only. For Chrome or Edge (needs libnss3-tools):",
        `certutil -d "sql:$HOME/.pki/nssdb" -A -t "P,," -n cribsheet-localhost -i "${cert}"`,
      ],
      forget: ['certutil -d "sql:$HOME/.pki/nssdb" -D -n cribsheet-localhost'],
    },
  };
}

const windows = (manifest) => [
  "   Windows",
  `     a. Share the folder with the manifest (right-click it, Properties, Sharing): ${folderOf(manifest)}`,
  "     b. In Excel: File, Options, Trust Center, Trust Center Settings, Trusted Add-in Catalogs.",
  "        Put the share's address (\\\\COMPUTER\\SHARE) into Catalog Url, Add catalog, tick Show in Menu.",
  "     c. Restart Excel. Home, Add-ins, More Add-ins, Shared Folder, Cribsheet, Add.",
];

const mac = (manifest) => [
  "   Mac",
  "     a. Copy the manifest to where Excel looks for it:",
  "        mkdir -p ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef",
  `        cp "${manifest}" ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef/cribsheet.xml`,
  "     b. Restart Excel. Home, Add-ins, and choose Cribsheet under Developer Add-ins.",
];

const web = () => [
  "   Excel on the web (the browser on this machine)",
  "     a. Open a workbook in Excel on the web. Home, Add-ins, More Add-ins, My Add-ins.",
  "     b. Upload My Add-in, choose the manifest, Upload.",
  "     c. If the browser asks whether the page may reach this machine, allow it.",
];

const folderOf = (file) => file.replace(/[\\/][^\\/]*$/, "");
