package dev.stayfixed.obd;

import java.util.regex.Pattern;

/** Lines that come from the adapter or the technician and not from the vehicle. */
final class Chatter {

    private static final Pattern NO_ANSWER = pattern("NO DATA");
    private static final Pattern NO_CONNECTION = pattern("UNABLE TO CONNECT");
    private static final Pattern LOST =
            pattern("(BUFFER FULL|STOPPED|(CAN|DATA|RX|FB|BUS) ERROR|BUS BUSY|ERR ?\\d\\d)\\W*");
    private static final Pattern MESSAGE = pattern("OK|\\?|SEARCHING\\W*|BUS INIT.*|(LV|LP|ACT) (RESET|ALERT)\\W*"
            + "|[A-Z0-9 -]+ v\\d++\\.\\d++\\w*+|\\d{1,2}\\.\\d+ ?V|(AUTO, ?)?(ISO|SAE) [\\w ()/,.-]+|AUTO");
    private static final Pattern COMMAND = pattern("(AT|ST) ?[A-Z@][A-Z0-9@]{0,4}( [0-9A-F ]*)?");
    private static final Pattern HEADING = pattern("[^:]*:|(MODE|SERVICE) ?\\$?[0-9A-F]{1,2}\\b.*|[-=*_~]{2}.*|\\W+");

    private static final String SILENCE = "no control unit answered; that says nothing about codes or monitors";

    private Chatter() {}

    private static Pattern pattern(String text) {
        return Pattern.compile(text, Pattern.CASE_INSENSITIVE);
    }

    /** Fails on free text: what is not known to be chatter may have carried something. */
    static LineContent read(String line, int from, int to) {
        String text = line.substring(from, to);
        if (NO_ANSWER.matcher(text).matches()) {
            return new LineContent.Unanswered(SILENCE);
        }
        if (NO_CONNECTION.matcher(text).matches()) {
            return new LineContent.Nothing(SILENCE);
        }
        if (LOST.matcher(text).matches()) {
            return new LineContent.Lost("the adapter lost answers to the last request; read it again");
        }
        if (MESSAGE.matcher(text).matches()) {
            return new LineContent.Nothing("adapter message, nothing from the vehicle");
        }
        if (COMMAND.matcher(text).matches()) {
            return new LineContent.Nothing("command to the adapter");
        }
        if (HEADING.matcher(text).matches()) {
            return new LineContent.Nothing("heading");
        }
        throw new ObdFormatException(
                line,
                from,
                "'" + HexTokens.shorten(text) + "'",
                "hexadecimal bytes of an answer such as 41 01 00 07 E5 00, or a code and its list such as P0420 pending");
    }
}
