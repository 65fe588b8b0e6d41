package dev.stayfixed.obd;

import java.util.Set;

/**
 * An answer, where it began, and how much of it there is.
 *
 * @param possible codes that the same bytes name where they are laid out in the other way that fits: of these the list says nothing
 * @param counted under the CAN identifier of its unit, with its length: no other line holds a part of it
 */
record Reading(int line, Scan.Heard heard, Extent extent, Set<TroubleCode> possible, boolean counted) {

    enum Extent {
        /** All of it: what a list does not name is not in it. */
        WHOLE,
        /** Codes may be missing from the list. */
        CUT_SHORT,
        /** Codes named in words: says nothing about others. */
        MENTION
    }

    Reading {
        possible = Set.copyOf(possible);
    }

    Reading(int line, Scan.Heard heard, Extent extent) {
        this(line, heard, extent, Set.of(), false);
    }

    String unit() {
        return heard.unit();
    }

    /** The whole list of its unit, whatever became of other lines. */
    boolean isCountedList(Answer.CodeList.Kind kind) {
        return counted && extent == Extent.WHOLE && answer() instanceof Answer.CodeList list && list.kind() == kind;
    }

    Answer answer() {
        return heard.answer();
    }
}
