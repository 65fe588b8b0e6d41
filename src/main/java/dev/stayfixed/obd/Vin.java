package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A vehicle identification number: 17 characters, upper case, without I, O and Q.
 *
 * @param text the number; blanks around it are dropped and small letters raised
 */
public record Vin(String text) {

    private static final int LENGTH = 17;
    private static final int CHECK_PLACE = 8;

    /** Values of the letters A to Z in 49 CFR 565.15 table III; 0 where a letter is not used. */
    private static final int[] LETTER_VALUES = {
        1, 2, 3, 4, 5, 6, 7, 8, 0, 1, 2, 3, 4, 5, 0, 7, 0, 9, 2, 3, 4, 5, 6, 7, 8, 9
    };

    /** 49 CFR 565.15 table IV; the check digit's own place counts nothing. */
    private static final int[] WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};

    /** Model years from 1980 (and from 2010), one a letter or digit; no I, O, Q, U, Z and 0. 49 CFR 565.15, from memory. */
    private static final String YEARS = "ABCDEFGHJKLMNPRSTVWXY123456789";

    public Vin {
        text = normalise(text);
    }

    /** The same as the constructor: 17 characters in either case, blanks around them allowed. */
    public static Vin parse(String text) {
        return new Vin(text);
    }

    private static String normalise(String input) {
        String stripped = input.strip();
        int start = input.indexOf(stripped);
        StringBuilder result = new StringBuilder(LENGTH);
        for (int place = 0; place < Math.min(stripped.length(), LENGTH); place++) {
            char c = stripped.charAt(place);
            char upper = c >= 'a' && c <= 'z' ? (char) (c - 'a' + 'A') : c;
            if (!isAllowed(upper)) {
                throw new ObdFormatException(
                        input, start + place, Part.verbatim("'" + c + "'"), ObdExpected.VIN_CHARACTER);
            }
            result.append(upper);
        }
        if (stripped.length() != LENGTH) {
            throw new ObdFormatException(
                    input,
                    start + Math.min(stripped.length(), LENGTH),
                    Reason.of(ObdFound.CHARACTER_COUNT, Part.count(stripped.length())),
                    ObdExpected.VIN_LENGTH);
        }
        return result.toString();
    }

    private static boolean isAllowed(char c) {
        return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z' && LETTER_VALUES[c - 'A'] != 0);
    }

    /** A check digit that does not agree. European numbers need none, so this warns and never rejects. */
    public Optional<Reason> warning() {
        char expected = checkDigit();
        char found = text.charAt(CHECK_PLACE);
        if (found == expected) {
            return Optional.empty();
        }
        return Optional.of(Reason.of(
                LineNote.CHECK_DIGIT, Part.verbatim(String.valueOf(found)), Part.verbatim(String.valueOf(expected))));
    }

    /** 49 CFR 565.15 (c): the weighted sum modulo 11, 10 written as X. */
    private char checkDigit() {
        int sum = 0;
        for (int place = 0; place < LENGTH; place++) {
            char c = text.charAt(place);
            sum += WEIGHTS[place] * (c <= '9' ? c - '0' : LETTER_VALUES[c - 'A']);
        }
        int remainder = sum % 11;
        return remainder == 10 ? 'X' : (char) ('0' + remainder);
    }

    /**
     * The model year of a passenger car or light truck: position 10, and position 7 for the thirty years (a letter: 2010 to 2039, a
     * digit: 1980 to 2009). Empty where position 10 is no year, and where the check digit does not agree, because numbers from
     * outside North America are not bound to this. Source: 49 CFR 565.15 (b) and 565.25 (b).
     */
    public OptionalInt modelYear() {
        int year = YEARS.indexOf(text.charAt(9));
        if (year < 0 || warning().isPresent()) {
            return OptionalInt.empty();
        }
        return OptionalInt.of((text.charAt(6) > '9' ? 2010 : 1980) + year);
    }
}
