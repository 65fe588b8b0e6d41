/** What is counted and measured of the running service, for those who run it. It says how much of what happened, and never to whom. */
@NullMarked
package dev.stayfixed.observing;

import org.jspecify.annotations.NullMarked;
