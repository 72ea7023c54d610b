/**
 * Builds what is served: the pane for Excel (`taskpane.html`), the embedded page (`index.html`) and
 * the manifest.
 *
 *   npm run build                                  for the address in manifest.xml
 *   npm run build -- --env url=https://host/path/  for a web server of your own
 *   npm run build -- --env url=… --env id=random   … with an id of your own (a GUID, or random)
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import CopyPlugin from "copy-webpack-plugin";
import { EsbuildPlugin } from "esbuild-loader";
import HtmlPlugin from "html-webpack-plugin";
import CssPlugin from "mini-css-extract-plugin";
import TerserPlugin from "terser-webpack-plugin";
import { FirstLoadBudget } from "./build/firstLoadBudget.js";
import { FunctionsFile } from "./build/functionsFile.js";
import { hostedManifest } from "./build/manifest.js";
import { embeddedPolicy, excelPolicy } from "./build/policy.js";
import { ThirdPartyLicences } from "./build/thirdPartyLicences.js";

const require = createRequire(import.meta.url);
const root = import.meta.dirname ?? path.dirname(new URL(import.meta.url).pathname);
const target = "es2022";

/**
 * What may be set with `--env`: `url` is the address of the files once they are served, `id` the
 * add-in's; `key`, `cert` and `ca` are certificate files for a server that Excel trusts; `port`.
 */
export default function webpackConfig(env = {}, { mode = "production" } = {}) {
  const isProduction = mode === "production";
  return {
    mode,
    target: ["web", target],
    devtool: isProduction ? false : "cheap-module-source-map",
    entry: {
      taskpane: "./src/main/excel/taskpane.ts",
      embedded: "./src/main/embedded/embedded.ts",
      // The rig of the browser tests is built beside the pages and served to tests only.
      ...(env.rig ? { rig: "./tests/browser/rig/page.ts" } : {}),
    },
    output: {
      path: path.resolve(root, env.output ?? "dist"),
      filename: isProduction ? "[name].[contenthash:8].js" : "[name].js",
      chunkFilename: isProduction ? "[name].[contenthash:8].js" : "[name].js",
      assetModuleFilename: "assets/[name].[contenthash:8][ext]",
      clean: true,
    },
    resolve: { extensions: [".tsx", ".ts", ".js"] },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          loader: "esbuild-loader",
          options: { target, jsx: "automatic" },
        },
        { test: /\.css$/, use: [CssPlugin.loader, "css-loader"] },
        {
          include: [packageFile("sonner", "dist"), packageFile("react-style-singleton", "dist")],
          test: /(sonner[\\/]dist[\\/]index|singleton)\.m?js$/,
          loader: path.join(root, "build/adoptStyles.cjs"),
        },
        {
          include: packageFile("@univerjs/core", "lib", "es"),
          test: /es[\\/]index\.js$/,
          loader: path.join(root, "build/keepAsTyped.cjs"),
        },
        {
          include: packageFile("@univerjs/sheets-ui", "lib", "es"),
          test: /es[\\/]index\.js$/,
          loader: path.join(root, "build/typeInAnyCell.cjs"),
        },
        {
          test: /node_modules[\\/]highs[\\/]build[\\/]highs\.mjs$/,
          loader: path.join(root, "build/solverInPages.cjs"),
        },
      ],
    },
    optimization: {
      minimizer: [
        // The pane is made as small as it can be; for the grid that would take minutes.
        new TerserPlugin({
          exclude: /grid/,
          extractComments: false,
          terserOptions: { ecma: 2020, format: { comments: false }, compress: { passes: 2 } },
        }),
        new EsbuildPlugin({
          target,
          css: true,
          legalComments: "none",
          include: [/grid/, /\.css$/],
        }),
      ],
      splitChunks: {
        cacheGroups: {
          // One file for the grid: its parts are never needed apart.
          grid: {
            test: (module) => gridPackages.test(module.nameForCondition?.() ?? ""),
            chunks: "async",
            name: "grid",
            priority: 10,
            enforce: true,
          },
        },
      },
    },
    plugins: [
      page("taskpane", excelPolicy),
      page("embedded", embeddedPolicy, "index.html"),
      ...(env.rig ? [page("rig", embeddedPolicy)] : []),
      new CssPlugin({
        filename: isProduction ? "[name].[contenthash:8].css" : "[name].css",
        chunkFilename: isProduction ? "[name].[contenthash:8].css" : "[name].css",
        // The grid's packages bring styles in an order that does not matter between them.
        ignoreOrder: true,
      }),
      new CopyPlugin({
        patterns: [
          { from: "assets", to: "assets", noErrorOnMissing: true },
          {
            from: "manifest.xml",
            noErrorOnMissing: true,
            transform: (content) =>
              hostedManifest(content.toString(), { url: env.url, id: env.id }),
          },
        ],
      }),
      new FunctionsFile(),
      new ThirdPartyLicences(),
      new FirstLoadBudget(
        {
          taskpane: { most: 200_000, then: ["excel"] },
          embedded: { most: 300_000, then: [] },
        },
        gridPackages,
        // What is built for tests is not served to anyone, and must be there to be tested.
        isProduction && !env.rig,
      ),
    ],
    performance: { hints: false },
    infrastructureLogging: { level: "info" },
    stats: "errors-warnings",
    devServer: devServer(env),
  };
}

const gridPackages =
  /node_modules[\\/](@univerjs|@wendellhu|rxjs|opentype\.js|decimal\.js|@flatten-js|lodash-es|@radix-ui|sonner|ot-json1|numfmt)[\\/]/;

function packageFile(name, ...parts) {
  // A package need not let its package.json be asked for; its main file is always there.
  const main = require.resolve(name);
  const folder = main.slice(0, main.lastIndexOf(path.normalize(name)) + name.length);
  return path.join(folder, ...parts);
}

function page(name, policy, filename = `${name}.html`) {
  const folder = {
    taskpane: "src/main/excel",
    embedded: "src/main/embedded",
    rig: "tests/browser/rig",
  };
  return new HtmlPlugin({
    filename,
    template: `${folder[name]}/${name}.html`,
    chunks: [name],
    scriptLoading: "defer",
    templateParameters: { policy },
  });
}

function devServer({ key, cert, ca, port = 3000, page: first = "" }) {
  const isSecure = key !== undefined && cert !== undefined;
  return {
    host: "localhost",
    port: Number(port),
    server: isSecure
      ? {
          type: "https",
          options: {
            key: readFileSync(key),
            cert: readFileSync(cert),
            ...(ca === undefined ? {} : { ca: readFileSync(ca) }),
          },
        }
      : "http",
    // Opening a browser is a kindness; where there is no screen nobody is told of a failure.
    open: !isSecure && canShowBrowser() ? [`/${first}`] : false,
    static: false,
    hot: false,
    client: { overlay: false, logging: "warn" },
    headers: { "Access-Control-Allow-Origin": "*" },
  };
}

const canShowBrowser = () =>
  process.env.CI === undefined &&
  (process.platform !== "linux" || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY));
