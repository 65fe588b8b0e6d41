package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers in several lines: ISO 15765-2 frames, numbered lines, and the lines of the older protocols. */
class ScanFramesTest {

    private static final TroubleCode P0420 = TroubleCode.parse("P0420");
    private static final String FIRST = "10 14 49 02 01 31 47 31";
    private static final String SECOND = "21 4A 43 35 34 34 34 52";
    private static final String THIRD = "22 37 32 35 32 33 36 37";
    private static final String VIN = "1G1JC5444R7252367";

    private static List<String> vins(Scan scan) {
        return scan.heard().stream()
                .map(heard -> heard.unit() + " "
                        + ((Answer.VehicleIdentification) heard.answer()).vin().text())
                .toList();
    }

    private static String outcomes(Scan scan) {
        return scan.lines().stream().map(line -> line.outcome().name()).collect(Collectors.joining(" "));
    }

    @Test
    void joinsInterleavedFramesByHeader() {
        Scan scan = Scan.read("7E8 " + FIRST + "\n7E9 " + FIRST + "\n7E8 " + SECOND + "\n7E9 " + SECOND + "\n7E9 "
                + THIRD + "\n7E8 " + THIRD);
        assertEquals(List.of("7E8 " + VIN, "7E9 " + VIN), vins(scan));
        assertEquals(
                "UNDERSTOOD UNDERSTOOD PART_OF_MESSAGE PART_OF_MESSAGE PART_OF_MESSAGE PART_OF_MESSAGE",
                outcomes(scan));
        assertEquals("part of the answer in line 2", words(scan.lines().get(4).explanation()));
        assertEquals(
                "vehicle identification number " + VIN,
                words(scan.lines().get(0).explanation()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                FIRST + "\n" + SECOND + "\n" + THIRD,
                "7E8 " + FIRST + "\n7E8 " + THIRD + "\n7E8 " + SECOND,
                "18DAF110 " + FIRST + "\n18DAF110 " + SECOND + "\n18DAF110 " + THIRD,
                "014\n0: 49 02 01 31 47 31\n1: 4A 43 35 34 34 34 52\n2: 37 32 35 32 33 36 37",
                "0: 49 02 01 31 47 31\n1: 4A 43 35 34 34 34 52\n2: 37 32 35 32 33 36 37",
                "014\n0:490201314731\n1:4A433534343452\n2:37323532333637",
                "49 02 01 31 47 31 4A 43 35 34 34 34 52 37 32 35 32 33 36 37",
                "014 49 02 01 31 47 31 4A 43 35 34 34 34 52 37 32 35 32 33 36 37 AA AA",
                "7E8 49 02 01 31 47 31 4A 43 35 34 34 34 52 37 32 35 32 33 36 37 00 00",
                "49 02 01 00 00 00 31\n49 02 02 47 31 4A 43\n49 02 03 35 34 34 34\n49 02 04 52 37 32 35\n49 02 05 32 33 36 37",
            })
    void readsTheNumberInEveryLayout(String pasted) {
        assertEquals(VIN, Scan.read(pasted).vin().orElseThrow().text());
    }

    @Test
    void olderLinesMayStandInAnyOrderAndRepeat() {
        String lines =
                "49 02 05 32 33 36 37\n49 02 01 00 00 00 31\n49 02 02 47 31 4A 43\n49 02 04 52 37 32 35\n49 02 03 35 34 34"
                        + " 34\n";
        assertEquals(List.of(" " + VIN, " " + VIN), vins(Scan.read(lines + lines)));
    }

    @Test
    void olderCountersHaveNoCountByte() {
        Scan scan = Scan.read("49 08 01 04 00 0D 09\n49 08 02 03 38 03 B1");
        assertEquals(1024, scan.inUse().orElseThrow().qualifyingDrives().orElseThrow());
        assertEquals(945, scan.inUse().orElseThrow().counts().get("CATCOND1"));
    }

    @Test
    void aGapSpoilsANumberAndNamesTheFrame() {
        Scan scan = Scan.read("7E8 " + FIRST + "\n7E8 " + THIRD);
        assertTrue(scan.vin().isEmpty());
        assertEquals("NOT_UNDERSTOOD NOT_UNDERSTOOD", outcomes(scan));
        assertEquals(
                "in the answer 49 02 01 31 47 31 at position 17: found an answer cut short, expected the rest: frame 1 is missing",
                words(scan.lines().get(0).explanation()));
        Scan older = Scan.read("49 02 01 00 00 00 31\n49 02 03 35 34 34 34");
        assertTrue(words(older.lines().get(0).explanation()).endsWith("the rest: line 2 is missing"));
        Scan numbered = Scan.read("014\n0: 49 02 01 31 47 31\n2: 37 32 35 32 33 36 37");
        assertTrue(words(numbered.lines().get(0).explanation()).endsWith("frame 1 is missing"));
        Scan last = Scan.read("7E8 " + FIRST + "\n7E8 " + SECOND);
        assertTrue(words(last.lines().get(0).explanation()).endsWith("frame 2 is missing"));
        Scan unknown = Scan.read("0: 49 02 01 31 47 31\n2: 37 32 35 32 33 36 37");
        assertTrue(words(unknown.lines().get(0).explanation()).endsWith("frame 1 is missing"));
    }

    @Test
    void aShortFrameSpoilsANumber() {
        Scan scan = Scan.read("7E8 " + FIRST + "\n7E8 21 4A 43 35\n7E8 " + THIRD);
        assertTrue(words(scan.lines().get(0).explanation()).endsWith("frame 1 has only 3 bytes"));
        Scan first = Scan.read("7E8 10 14 49 02 01\n7E8 " + SECOND + "\n7E8 " + THIRD);
        assertTrue(words(first.lines().get(0).explanation()).endsWith("frame 0 has only 3 bytes"));
        Scan last = Scan.read("7E8 " + FIRST + "\n7E8 " + SECOND + "\n7E8 22 37 32 35 32 33 36");
        assertTrue(words(last.lines().get(0).explanation()).endsWith("frame 2 has only 6 bytes"));
    }

    @Test
    void aCodeListKeepsTheCodesBeforeTheGap() {
        Scan scan = Scan.read("7E8 10 0A 43 04 04 20 04 42\n7E9 02 43 00");
        assertEquals(Scan.Presence.PRESENT, scan.confirmed(P0420));
        assertEquals(Scan.Presence.UNKNOWN, scan.confirmed(TroubleCode.parse("P0171")));
        assertEquals(
                "confirmed: P0420, P0442; the list is cut short: frame 1 is missing",
                words(scan.lines().get(0).explanation()));
    }

    @Test
    void mixedLinesWithoutHeaderAreNotGuessed() {
        Scan scan = Scan.read(
                "014\n0: 49 02 01 31 47 31\n014\n0: 49 02 01 32 47 31\n1: 4A 43 35 34 34 34 52\n1: 4A 43 35 34 34 34"
                        + " 53\n2: 37 32 35 32 33 36 37\n2: 37 32 35 32 33 36 38");
        assertEquals(List.of(), scan.heard());
        assertTrue(scan.lines().stream().allMatch(line -> line.outcome() == Scan.Line.Outcome.NOT_UNDERSTOOD));
        assertTrue(words(scan.lines().get(1).explanation())
                .endsWith("two control units' lines are mixed and show no header: read it again with headers"));
    }

    @Test
    void mixedLinesThatFitOnlyOneWayAreJoined() {
        Scan scan = Scan.read("""
                013
                0: 49 04 01 35 36 30
                1: 32 38 39 34 39 41 43
                013
                0: 49 04 01 35 36 30
                2: 00 00 00 00 00 00 31
                1: 32 38 39 35 34 41 43
                2: 00 00 00 00 00 00 00
                """);
        assertEquals(
                "infotype 04 of service $09 is not used here",
                words(scan.lines().get(1).explanation()));
        assertEquals("part of the answer in line 2", words(scan.lines().get(5).explanation()));
        assertEquals("part of the answer in line 5", words(scan.lines().get(6).explanation()));
        assertEquals("part of the answer in line 5", words(scan.lines().get(7).explanation()));
    }

    @Test
    void aRequestEndsTheAnswersBeforeIt() {
        Scan scan = Scan.read(
                "09 02\n014\n0: 49 02 01 31 47 31\n1: 4A 43 35 34 34 34 52\n09 02\n014\n0: 49 02 01 31 47 31\n1: 4A 43 35"
                        + " 34 34 34 52\n2: 37 32 35 32 33 36 37");
        assertEquals(List.of(" " + VIN), vins(scan));
        assertEquals(Scan.Line.Outcome.NOT_UNDERSTOOD, scan.lines().get(2).outcome());
        assertEquals(Scan.Line.Outcome.UNDERSTOOD, scan.lines().get(6).outcome());
    }

    @Test
    void aNewFirstFrameEndsTheAnswerOfItsControlUnit() {
        Scan scan = Scan.read("7E8 " + FIRST + "\n7E8 " + FIRST + "\n7E8 " + SECOND + "\n7E8 " + THIRD);
        assertEquals(List.of("7E8 " + VIN), vins(scan));
        assertEquals("NOT_UNDERSTOOD UNDERSTOOD PART_OF_MESSAGE PART_OF_MESSAGE", outcomes(scan));
    }

    @Test
    void aLengthWithoutLinesSaysSo() {
        Scan scan = Scan.read("014\n> 0100\n00A\n0: 43 04 01 08 01 18\n1: 01 19 01 20 00 00");
        assertEquals(
                "found the length of an answer, expected its lines 0:, 1:, ... below it",
                words(scan.lines().get(0).explanation()));
        assertEquals(Scan.Presence.PRESENT, scan.confirmed(TroubleCode.parse("P0108")));
        assertEquals(Scan.Presence.ABSENT, scan.confirmed(P0420));
        assertEquals("part of the answer in line 4", words(scan.lines().get(2).explanation()));
    }

    @Test
    void longAnswersCountTheirFramesModulo16() {
        int codes = 200;
        int length = 2 + 2 * codes;
        StringBuilder bytes = new StringBuilder("43 C8");
        IntStream.rangeClosed(1, codes).forEach(code -> bytes.append(String.format(" 01 %02X", code)));
        String[] data = bytes.toString().split(" ", -1);
        StringBuilder frames = new StringBuilder(String.format("7E8 1%X %02X", length >> 8, length & 0xFF));
        StringBuilder lines = new StringBuilder(String.format("%03X", length));
        for (int at = 0; at < length; at++) {
            if (at == 0) {
                lines.append("\n0:");
            } else if (at >= 6 && (at - 6) % 7 == 0) {
                int number = ((at - 6) / 7 + 1) % 16;
                frames.append(String.format("\n7E8 2%X", number));
                lines.append(String.format("\n%X:", number));
            }
            frames.append(' ').append(data[at]);
            lines.append(' ').append(data[at]);
        }
        for (String pasted : List.of(frames.toString(), lines.toString())) {
            Scan scan = Scan.read(pasted);
            Answer.CodeList list = (Answer.CodeList) scan.heard().get(0).answer();
            assertEquals(codes, list.codes().size());
            assertEquals("P01C8", list.codes().get(199).text());
            assertEquals(Scan.Presence.ABSENT, scan.confirmed(P0420));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "7E8 21 4A 43 35 34 34 34 52",
                "21 4A 43 35 34 34 34 52",
                "1: 4A 43 35 34 34 34 52",
                "7E8 40 01",
                "7E8 10 07 49 02 01 31 47 31",
                "7E8 10 14",
                "7E8 08 41 00 00 01 02 03 04",
                "7E8 06",
                "0: 49 02 01 31 47 31 00",
                "7E8",
                "7E8 5",
                "005",
                "014 49 02 01",
                "000 49 02",
                "F1 02 03",
                "123 F5 67",
            })
    void framesWithoutPlaceAreNotUnderstood(String line) {
        assertEquals("NOT_UNDERSTOOD", outcomes(Scan.read(line)));
    }

    @Test
    void aContinuationBeyondTheLengthHasNoPlace() {
        Scan scan = Scan.read("7E8 " + FIRST + "\n7E8 25 00 00 00 00 00 00 00\n7E8 " + SECOND + "\n7E8 " + THIRD);
        assertEquals(List.of("7E8 " + VIN), vins(scan));
        assertEquals("UNDERSTOOD NOT_UNDERSTOOD PART_OF_MESSAGE PART_OF_MESSAGE", outcomes(scan));
        Scan after = Scan.read("7E8 " + FIRST + "\n7E8 " + SECOND + "\n7E8 " + THIRD + "\n7E8 23 00 00 00");
        assertEquals("UNDERSTOOD PART_OF_MESSAGE PART_OF_MESSAGE NOT_UNDERSTOOD", outcomes(after));
    }

    @Test
    void anotherControlUnitsContinuationHasNoPlace() {
        Scan scan = Scan.read("7E8 " + FIRST + "\n7E9 " + SECOND + "\n7E8 " + SECOND + "\n7E8 " + THIRD);
        assertEquals("UNDERSTOOD NOT_UNDERSTOOD PART_OF_MESSAGE PART_OF_MESSAGE", outcomes(scan));
    }

    @Test
    void aShortSingleFrameIsCutShort() {
        Scan scan = Scan.read("7E8 06 41 01 00 07 65");
        assertTrue(words(scan.lines().get(0).explanation()).endsWith("the rest: 6 bytes announced and 5 there"));
        Scan codes = Scan.read("7E8 06 43 02 04 20");
        assertEquals(Scan.Presence.PRESENT, codes.confirmed(P0420));
        assertEquals(Scan.Presence.UNKNOWN, codes.confirmed(TroubleCode.parse("P0171")));
    }

    @Test
    void identifierRequestsAndContinuationsAreToldApart() {
        assertEquals("IGNORED", outcomes(Scan.read("22 F4 0D")));
        assertEquals("IGNORED", outcomes(Scan.read("22 F4 0D F4 0C")));
        Scan joined = Scan.read("10 0F 49 0A 01 31 47 31\n21 4A 43 35 34 34 34 52\n22 37 32");
        assertEquals("part of the answer in line 1", words(joined.lines().get(2).explanation()));
        assertEquals("NOT_UNDERSTOOD", outcomes(Scan.read("22 F4")));
    }
}
