package dev.stayfixed.simulator;

import java.util.SplittableRandom;

/**
 * Invented vehicle identification numbers. They begin with G0 and, in the European style, with U0: region codes that are assigned to no
 * country (ISO 3780, from memory), so that no maker owns them.
 */
public final class Vins {

    private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ";
    private static final String LETTER_VALUES = "12345678123457923456789";
    private static final int[] WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
    private static final String MODEL_YEARS = "BCDEFGHJKLMNPRS";

    private Vins() {}

    /** With the check digit of 49 CFR 565.15. */
    public static String invented(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        char year = MODEL_YEARS.charAt(random.nextInt(MODEL_YEARS.length()));
        return withCheckDigit("G0SVA%dA%d0%cT%06d"
                .formatted(1 + random.nextInt(9), 1 + random.nextInt(9), year, random.nextInt(1_000_000)));
    }

    /** Model year of position 10, for the numbers of {@link #invented}. */
    public static int modelYear(String vin) {
        return 2011 + MODEL_YEARS.indexOf(vin.charAt(9));
    }

    /** European style: fillers in positions 4 to 6, no check digit. */
    public static String european(int serial) {
        return "U0SZZZ4KZLT%06d".formatted(serial);
    }

    static String withCheckDigit(String vin) {
        int sum = 0;
        for (int i = 0; i < vin.length(); i++) {
            sum += value(vin.charAt(i)) * WEIGHTS[i];
        }
        char check = sum % 11 == 10 ? 'X' : (char) ('0' + sum % 11);
        return vin.substring(0, 8) + check + vin.substring(9);
    }

    private static int value(char c) {
        int letter = LETTERS.indexOf(c);
        return (letter < 0 ? c : LETTER_VALUES.charAt(letter)) - '0';
    }
}
