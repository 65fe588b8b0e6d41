package dev.stayfixed.recording;

import dev.stayfixed.reason.Part;

/** Text from a file as a message shows it: quoted, short, without control characters. */
final class Shown {

    private static final int LONGEST = 60;

    private Shown() {}

    static Part part(String text) {
        return Part.verbatim(of(text));
    }

    static String of(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", "·");
        return '"' + (plain.length() > LONGEST ? plain.substring(0, LONGEST) + "…" : plain) + '"';
    }
}
