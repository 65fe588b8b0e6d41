package dev.stayfixed.platform;

import java.util.Optional;

/** Text that both databases and every reader can hold. */
public final class PlainText {

    private PlainText() {}

    /** The first character that does not belong in text, and its zero-based place; empty for good text. */
    public static Optional<String> flaw(String text) {
        for (int at = 0; at < text.length(); at++) {
            char c = text.charAt(at);
            if (Character.isHighSurrogate(c)
                    && at + 1 < text.length()
                    && Character.isLowSurrogate(text.charAt(at + 1))) {
                at++;
            } else if (Character.isSurrogate(c) || c == 0x7F || (c < 0x20 && c != '\n' && c != '\r' && c != '\t')) {
                return Optional.of("the character U+%04X at position %d".formatted((int) c, at));
            }
        }
        return Optional.empty();
    }
}
