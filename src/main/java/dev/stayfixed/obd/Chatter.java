package dev.stayfixed.obd;

import dev.stayfixed.reason.Reason;
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

    private static final Reason SILENCE = Reason.of(LineNote.NO_UNIT_ANSWERED);

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
            return new LineContent.Lost(Reason.of(LineNote.ANSWERS_LOST));
        }
        if (MESSAGE.matcher(text).matches()) {
            return new LineContent.Nothing(Reason.of(LineNote.ADAPTER_MESSAGE));
        }
        if (COMMAND.matcher(text).matches()) {
            return new LineContent.Nothing(Reason.of(LineNote.ADAPTER_COMMAND));
        }
        if (HEADING.matcher(text).matches()) {
            return new LineContent.Nothing(Reason.of(LineNote.HEADING));
        }
        throw new ObdFormatException(line, from, HexTokens.quoted(text), ObdExpected.ANSWER_OR_CODES);
    }
}
