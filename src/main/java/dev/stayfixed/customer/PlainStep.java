package dev.stayfixed.customer;

import dev.stayfixed.reason.Part;

/**
 * One step of a drive.
 *
 * @param amount how long, how much, or how: what is seen at a glance
 * @param says what to do, which speaks of the amount as "this"
 */
record PlainStep(Part amount, Part says) {}
