package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.stayfixed.Count;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Inputs for each parser, random and mutated from valid ones: nothing but {@link ObdFormatException} comes out of a parser, and nothing
 * at all out of {@link Scan#read}. A failure names the seed that brings the very input back. 100,000 inputs a parser where CI=true,
 * 20,000 elsewhere; {@code -Dstayfixed.fuzz=1000000} asks for more.
 */
@Tag("fuzz")
class FuzzTest {

    private static final int RUNS = Count.of("stayfixed.fuzz", 20_000, 100_000);
    private static final String HEX_LIKE = "0123456789ABCDEFabcdef      ";
    private static final String ANY =
            "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcxyz :;,<>#/$-=?.\t\r\n\u00A0\u00E9\u0660\uD83D\uDE97";

    private static final String[] SCANS = {
        "7E8 06 41 01 81 07 65 04",
        "7E80641010007E500",
        "18DAF110 06 41 01 00 07 65 00",
        "48 6B 10 41 0D 28 39",
        "43 02 01 02 01 13",
        "43 01 33 00 00 00 00",
        "19 02 5A\n59 02 FB 12 34 56 20 12 34 57 60",
        "014\n0: 49 02 01 31 47 31\n1: 4A 43 35 34 34 34 52\n2: 37 32 35 32 33 36 37",
        "7E8 10 14 49 02 01 31 47 31\n7E8 21 4A 43 35 34 34 34 52\n7E8 22 37 32 35 32 33 36 37",
        "10 14 49 02 01 31 47 31\n21 4A 43 35 34 34 34 52\n22 37 32 35 32 33 36 37",
        "49 02 01 00 00 00 57\n49 02 02 50 30 5A 5A",
        "46 21 84 20 00 80 00 00 00 C0",
        "49 08 04 04 00 0D 09 03 38 03 B1",
        "59 42 33 FF 1E 04 20 04 20 00 2F",
        "62 F4 0D 28",
        "42 02 00 04 20",
        "P0420 pending",
        "SEARCHING...\nNO DATA\n> 01 0C 1",
        "Codes: 47 01 04 42 # comment",
    };

    private static final String[] CODES = {"P0420", "p0420", " P0420-1F ", "U3FFF", "C0420-00", "B0003"};
    private static final String[] VINS = {"1G1JC5444R7252367", "wp0zzz99zts392124", " 1M8GDM9AXKP042788\t"};

    @Test
    void scansNeverThrowAndKeepEveryLine() {
        TroubleCode code = TroubleCode.parse("P0420");
        fuzz(SCANS, 40, text -> {
            Scan scan = Scan.read(text);
            for (Scan.Line line : scan.lines()) {
                assertTrue(
                        text.contains(line.text()) && !words(line.explanation()).isEmpty());
            }
            scan.pending(code);
            scan.confirmed(code);
            scan.permanent(code);
            scan.status(code);
            scan.sinceClear();
            scan.freezeFrameCode();
            scan.contradictions();
            scan.testResults().forEach(result -> words(result.said()));
        });
    }

    @Test
    void troubleCodesParseOrFailInTheOneWay() {
        fuzz(
                CODES,
                10,
                text -> onlyFormatFailure(text, () -> {
                    TroubleCode code = TroubleCode.parse(text);
                    assertEquals(code, TroubleCode.parse(code.text()));
                }));
    }

    @Test
    void vehicleNumbersParseOrFailInTheOneWay() {
        fuzz(
                VINS,
                20,
                text -> onlyFormatFailure(text, () -> {
                    Vin vin = Vin.parse(text);
                    assertEquals(17, vin.text().length());
                    vin.warning();
                    vin.modelYear();
                }));
    }

    @Test
    void byteReadersTakeBytesAndRefuseTheRest() {
        for (int seed = 0; seed < RUNS; seed++) {
            Random random = new Random(seed);
            int[] v = random.ints(6, -2, 0x102).toArray();
            try {
                onlyFormatFailure("", () -> Readiness.ofBytes(v[0], v[1], v[2], v[3]));
                onlyFormatFailure("", () -> new StatusByte(v[0], v[1]).thisCycle());
                onlyFormatFailure(
                        "", () -> TroubleCode.ofBytes(v[0], v[1], v[2]).text());
                onlyFormatFailure("", () -> TroubleCode.ofBytes(v[0], v[1]).text());
                onlyFormatFailure("", () -> FuelSystemStatus.ofByte(v[5]));
                onlyFormatFailure("", () -> words(new TestResult(v[0], v[1], v[2], v[3] * 256, v[4], v[5]).said()));
            } catch (RuntimeException failure) {
                throw new AssertionError("seed " + seed, failure);
            }
        }
    }

    private static void onlyFormatFailure(String text, Runnable reading) {
        try {
            reading.run();
        } catch (ObdFormatException failure) {
            assertTrue(text.isEmpty() || (failure.position() >= 0 && failure.position() <= text.length()));
            assertTrue(text.isEmpty() || failure.input().equals(text));
        }
    }

    private static void fuzz(String[] valid, int longest, Consumer<String> reading) {
        for (int seed = 0; seed < RUNS; seed++) {
            Random random = new Random(seed);
            String text = random.nextInt(4) == 0 ? made(random, longest) : mutated(random, valid);
            try {
                reading.accept(text);
            } catch (RuntimeException | AssertionError | StackOverflowError failure) {
                throw new AssertionError("seed " + seed + ", input <" + text + ">", failure);
            }
        }
    }

    private static String made(Random random, int longest) {
        String alphabet = random.nextBoolean() ? HEX_LIKE : ANY;
        int length = random.nextInt(longest + 1);
        StringBuilder text = new StringBuilder(length);
        for (int at = 0; at < length; at++) {
            text.append(alphabet.charAt(random.nextInt(alphabet.length())));
        }
        return text.toString();
    }

    /** One to three characters changed, removed, doubled or put in, and now and then the end cut off. */
    private static String mutated(Random random, String[] valid) {
        StringBuilder text = new StringBuilder(valid[random.nextInt(valid.length)]);
        int changes = random.nextInt(4);
        for (int change = 0; change < changes && !text.isEmpty(); change++) {
            int at = random.nextInt(text.length());
            char other = (random.nextInt(3) == 0 ? ANY : HEX_LIKE).charAt(random.nextInt(HEX_LIKE.length()));
            switch (random.nextInt(5)) {
                case 0 -> text.setCharAt(at, other);
                case 1 -> text.deleteCharAt(at);
                case 2 -> text.insert(at, other);
                case 3 -> text.insert(at, text.charAt(at));
                default -> text.setLength(at);
            }
        }
        return text.toString();
    }
}
