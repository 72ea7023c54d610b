/** The colours of a picture where its host has no colours of its own for it; `RRGGBB`. */
export const pictureInks = { ink: "1F2328", tint: "E4ECE8", wire: "B9C2BE" } as const;
