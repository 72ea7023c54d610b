/** The theme's colours and sizes by name, for `makeStyles`. */
import type { Theme } from "@fluentui/react-components";

/**
 * `tokens.colorBrandStroke1` is `var(--colorBrandStroke1)`, as in Fluent's own table of the same
 * name, which would be loaded with all its names.
 */
export const tokens = new Proxy({} as Readonly<Record<keyof Theme, string>>, {
  get: (_, name) => `var(--${String(name)})`,
});
