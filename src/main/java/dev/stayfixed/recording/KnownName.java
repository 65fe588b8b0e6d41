package dev.stayfixed.recording;

import dev.stayfixed.drive.signal.Signal;

/**
 * A signal that a header names.
 *
 * @param unit the unit that the name implies
 * @param source where the name is from
 * @param metresSince6 the name means km up to version 5 of the vocabulary and m from version 6
 */
record KnownName(Signal signal, SourceUnit unit, String source, boolean metresSince6) {

    KnownName(Signal signal, String source) {
        this(signal, SourceUnit.canonical(signal), source, false);
    }

    /** What stands in the header beside the name: from the first bracket on. */
    String beside(String header) {
        for (int i = 0; i < header.length(); i++) {
            if (header.charAt(i) == '(' || header.charAt(i) == '[') {
                return header.substring(i);
            }
        }
        return "";
    }
}
