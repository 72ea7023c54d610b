/** Takes a fault of this program out of asynchronous work to where it is shown. */
import { useCallback, useState } from "react";

/** A function that throws what it is given at the next rendering, so that the boundary catches it. */
export function useBroken(): (error: unknown) => void {
  const [, render] = useState<null>(null);
  return useCallback((error: unknown) => {
    render(() => {
      throw error;
    });
  }, []);
}
