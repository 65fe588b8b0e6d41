package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A line in the usual form is read the short way to what the careful way makes of it, failures included. Seeded. */
class HexLineTest {

    private static final String[] HEADERS = {"", "", "7E8 ", "7e9 ", "7DF ", "7E0 ", "123 ", "014 ", "19A ", "ABC "};
    private static final int[] FIRST = {
        0x41, 0x43, 0x7F, 0x10, 0x21, 0x30, 0x02, 0x00, 0x18, 0x48, 0x86, 0x01, 0x22, 0x19
    };
    private static final int[] SECOND = {0x6B, 0xDA, 0xDB, 0xF1, 0x6A, 0x0C, 0x41, 0x00};
    private static final String ODD = "0123456789abcdefABCDEF   ,\t$xg";

    private static String line(Random random) {
        StringBuilder line = new StringBuilder(HEADERS[random.nextInt(HEADERS.length)]);
        line.append(Bytes.hex(FIRST[random.nextInt(FIRST.length)]));
        for (int left = random.nextInt(11), at = 0; at < left; at++) {
            int value = at == 0 && random.nextBoolean() ? SECOND[random.nextInt(SECOND.length)] : random.nextInt(256);
            line.append(' ').append(random.nextBoolean() ? Bytes.hex(value) : "%02x".formatted(value));
        }
        if (random.nextInt(4) == 0) {
            int at = random.nextInt(line.length());
            line.replace(at, at + random.nextInt(2), "" + ODD.charAt(random.nextInt(ODD.length())));
        }
        return line.toString().strip();
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void bothWaysAgree(long seed) {
        Random random = new Random(seed);
        int plain = 0;
        for (int run = 0; run < 30_000; run++) {
            String line = line(random);
            if (line.isEmpty() || !HexTokens.areIn(line, 0, line.length())) {
                continue;
            }
            String theShortWay = told(() -> HexLine.readPlain(line, 0, line.length()));
            if (!theShortWay.equals(Optional.empty().toString())) {
                plain++;
                String careful = told(() -> Optional.of(HexLine.read(line, 0, line.length())));
                assertEquals(careful, theShortWay, () -> "seed " + seed + ", " + line);
            }
        }
        assertTrue(plain > 15_000, "too few lines in the usual form to prove anything: " + plain);
    }

    private static String told(Supplier<Optional<LineContent>> reading) {
        try {
            return reading.get().toString();
        } catch (ObdFormatException failure) {
            return failure.position() + " of " + failure.input() + ": " + words(failure.reason());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "41 0C 1A F8,true",
        "7E8 04 41 0C 1A F8,true",
        "41,true",
        "410C1AF8,false",
        "41  0C,false",
        "41 0C 1,false",
        "18 DA F1 10 03 41 0D 32,false",
        "014 49 02 01,false",
        "0x41 0x0C,false",
        "7E8,false",
        "7E8 4 41,false"
    })
    void theUsualFormIsKnown(String line, boolean usual) {
        assertEquals(usual, HexLine.readPlain(line, 0, line.length()).isPresent());
    }
}
