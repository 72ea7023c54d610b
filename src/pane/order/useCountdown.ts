/** Seconds that are left, counted on between two times of being told. */
import { useEffect, useState } from "react";

/** `told` is how many there were when it last changed; never below zero. */
export function useCountdown(told: number): number {
  const [gone, setGone] = useState({ told, seconds: 0 });
  useEffect(() => {
    const begin = performance.now();
    const timer = setInterval(
      () => setGone({ told, seconds: (performance.now() - begin) / 1000 }),
      500,
    );
    return () => clearInterval(timer);
  }, [told]);
  return Math.max(0, told - (gone.told === told ? gone.seconds : 0));
}
