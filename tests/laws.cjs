/**
 * Laws are tried with the same numbers each time, so that a change is what makes a test fail and not
 * the day. `CRIBSHEET_SEED=42 npx jest …` tries them with others: what it finds becomes a test.
 */
const fc = require("fast-check");

fc.configureGlobal({ seed: Number(process.env.CRIBSHEET_SEED ?? 20261130) });
