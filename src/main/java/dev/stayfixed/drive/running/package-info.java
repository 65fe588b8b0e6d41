/**
 * Checks with the engine running: what a run of the engine has to show, and what a recorded one makes of it, alike before and after a
 * repair. Pure. Open {@link dev.stayfixed.drive.running.RunningCheck} first.
 */
@NullMarked
package dev.stayfixed.drive.running;

import org.jspecify.annotations.NullMarked;
