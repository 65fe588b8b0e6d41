/**
 * Logs of drives: from the bytes of a CSV file, plain or compressed, to rows of signals, in constant memory. Open {@link
 * dev.stayfixed.recording.LogReader} first, then {@link dev.stayfixed.recording.LogMapping} and {@link
 * dev.stayfixed.recording.Proposal}. May depend on {@code drive.signal}, on a CSV library and on a unit library; not on Spring or a
 * database.
 */
@org.jspecify.annotations.NullMarked
package dev.stayfixed.recording;
