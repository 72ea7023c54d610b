/** Gathers what is sent to Excel and sends it before a request grows too large. */

/** A request may have 5 MB; estimates of what is in it may be wrong by half. */
const requestBytes = 2_000_000;

/** What one property set on one range takes in a request, about. */
export const settingBytes = 250;

export type Outbox = {
  /** Makes room for `bytes` more, sending what is gathered if it must. Call it before adding. */
  readonly room: (bytes: number) => Promise<void>;
  /** Sends what is gathered. */
  readonly send: () => Promise<void>;
};

/** While requests go out, Excel neither calculates nor redraws in between. */
export function outbox(context: Excel.RequestContext): Outbox {
  let gathered = 0;
  const send = async (): Promise<void> => {
    gathered = 0;
    await context.sync();
  };
  return {
    send,
    room: async (bytes) => {
      if (gathered > 0 && gathered + bytes > requestBytes) await send();
      if (gathered === 0) {
        context.application.suspendApiCalculationUntilNextSync();
        context.application.suspendScreenUpdatingUntilNextSync();
      }
      gathered += bytes;
    },
  };
}
