/** How long things take at the invented boilers of the demo. */

/** What a person needs between two entries. */
export const SECONDS_PER_ENTRY = 15;
/** From one stage of a tuning run to the next. */
export const SECONDS_PER_TUNING_STAGE = 90;
