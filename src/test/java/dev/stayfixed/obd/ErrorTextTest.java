package dev.stayfixed.obd;

import static dev.stayfixed.English.words;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.stayfixed.English;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The exact words for the main bad inputs: where, what was found, what was expected. */
class ErrorTextTest {

    private static ObdFormatException failure(Executable reading) {
        return assertThrows(ObdFormatException.class, reading);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "P042|at position 4: found the end of the text, expected four digits after the letter",
                "PO420|at position 1: found 'O', expected 0, 1, 2 or 3 as the first digit of the code",
                "P4420|at position 1: found '4', expected 0, 1, 2 or 3 as the first digit of the code",
                "X0420|at position 0: found 'X', expected a code such as P0420, beginning with P, C, B or U",
                "'  '|at position 2: found the end of the text, expected a code such as P0420, beginning with P, C, B or U",
                "P04G0|at position 3: found 'G', expected a hexadecimal digit (0-9, A-F)",
                "P0420 1F|at position 5: found ' ', expected the end, or '-' and two hexadecimal digits of failure type",
                "P0420-1|at position 7: found the end of the text, expected five characters (P0420), or eight with the failure type"
                        + " (P0420-1F)",
                "P0420-1F0|at position 8: found '0', expected five characters (P0420), or eight with the failure type (P0420-1F)",
                "P0420-1G|at position 7: found 'G', expected a hexadecimal digit (0-9, A-F)",
                " P0000|at position 1: found P0000, expected a code; P0000 is padding and stands for no code",
            })
    void ofTroubleCodes(String text, String message) {
        ObdFormatException failure = failure(() -> TroubleCode.parse(text));
        assertEquals(message, words(failure.reason()));
        assertEquals(text, failure.input());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "1G1JC5444R725236|at position 16: found 16 characters, expected 17 characters of a vehicle identification number",
                "1G1JC5444R72523677|at position 17: found 18 characters, expected 17 characters of a vehicle identification number",
                " 1G1JC5444R725236O|at position 17: found 'O', expected a digit or a letter other than I, O and Q",
                "1G1JC544-R7252367|at position 8: found '-', expected a digit or a letter other than I, O and Q",
                "\u00E91|at position 0: found '\u00E9', expected a digit or a letter other than I, O and Q",
            })
    void ofVehicleNumbers(String text, String message) {
        ObdFormatException failure = failure(() -> Vin.parse(text));
        assertEquals(message, words(failure.reason()));
        assertEquals(text, failure.input());
    }

    @Test
    void ofACheckDigit() {
        assertEquals(
                "check digit: position 9 is 'Z', the other characters call for '8'; compare with the vehicle (numbers from outside"
                        + " North America need no check digit)",
                Vin.parse("WP0ZZZ99ZTS392124").warning().map(English::words).orElseThrow());
    }

    @Test
    void ofBytesOutOfRange() {
        assertEquals(
                "at position 7: found 256, expected byte A from 0 to 255",
                words(failure(() -> Readiness.ofBytes(256, 0, 0, 0)).reason()));
        assertEquals("byte B -1", failure(() -> Readiness.ofBytes(0, -1, 0, 0)).input());
        assertEquals(
                "byte C 256", failure(() -> Readiness.ofBytes(0, 0, 256, 0)).input());
        assertEquals(
                "byte D 256", failure(() -> Readiness.ofBytes(0, 0, 0, 256)).input());
        assertEquals("status 256", failure(() -> new StatusByte(256, 0xFF)).input());
        assertEquals(
                "status availability mask 256",
                failure(() -> new StatusByte(0, 256)).input());
        assertEquals("high byte 256", failure(() -> TroubleCode.ofBytes(256, 1)).input());
        assertEquals("low byte 256", failure(() -> TroubleCode.ofBytes(1, 256)).input());
        assertEquals(
                "failure type 256",
                failure(() -> TroubleCode.ofBytes(1, 1, 256)).input());
        assertEquals(
                "at position 0: found 00, expected a code from 0001 to FFFF (0000 is padding, no code)",
                words(failure(() -> TroubleCode.ofBytes(0, 0)).reason()));
        assertEquals(
                "10000",
                failure(() -> new TroubleCode(0x10000, OptionalInt.empty())).input());
        assertEquals("OBDMID 0", failure(() -> new TestResult(0, 0, 0, 0, 0, 0)).input());
        assertEquals(
                "OBDMID 256", failure(() -> new TestResult(256, 0, 0, 0, 0, 0)).input());
        assertEquals(
                "TID 256", failure(() -> new TestResult(1, 256, 0, 0, 0, 0)).input());
        assertEquals(
                "unit-and-scaling id 256",
                failure(() -> new TestResult(1, 0, 256, 0, 0, 0)).input());
        assertEquals(
                "value 65536",
                failure(() -> new TestResult(1, 0, 0, 65536, 0, 0)).input());
        assertEquals(
                "minimum -1", failure(() -> new TestResult(1, 0, 0, 0, -1, 0)).input());
        assertEquals(
                "maximum 65536",
                failure(() -> new TestResult(1, 0, 0, 0, 0, 65536)).input());
        assertEquals(
                "at position 0: found 03, expected one of 00, 01, 02, 04, 08, 10 (one bit at most)",
                words(failure(() -> FuelSystemStatus.ofByte(3)).reason()));
        assertEquals(
                "at position 21: found 1, expected data bytes of PID 0C from 2 to 2",
                words(failure(() -> Pid.of(0x0C).orElseThrow().value(List.of(1)))
                        .reason()));
        assertEquals(
                "data byte 256",
                failure(() -> Pid.of(0x0D).orElseThrow().value(List.of(256))).input());
        assertEquals(
                "CATCOMP1 65536",
                failure(() -> new InUseCounters(Ignition.SPARK, java.util.Map.of("CATCOMP1", 65536)))
                        .input());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "hello|at position 0: found 'hello', expected hexadecimal bytes of an answer such as 41 01 00 07 E5 00, or a code and its"
                        + " list such as P0420 pending",
                "  41 0|at position 5: found '0' (1 digits), expected two hexadecimal digits a byte",
                "F1 02|at position 0: found the byte F1, expected an answer (41 to 4A, 54, 59, 62, 7F), a request (01 to 0A, 14, 19, 22),"
                        + " or a CAN frame",
                "7E8 F1 02|at position 0: found the byte F1, expected an answer (41 to 4A, 54, 59, 62, 7F), a request (01 to 0A, 14, 19,"
                        + " 22), or a CAN frame",
                "7E8 06 41 01 00 07 65 00 00 00|at position 0: found 9 bytes behind the header, expected at most 8 bytes in a CAN frame",
                "18DAF110|at position 0: found the header 18DAF110 alone, expected bytes behind it",
                "7E8 0F 41|at position 0: found the frame length 15, expected 1 to 7 bytes in a single frame",
                "7E8 06|at position 0: found a frame without bytes, expected 6 bytes behind the length",
                "7E8 10 07 41|at position 0: found a first frame of length 7, expected a length of at least 8 and the first bytes",
                "7E8 2A 41|at position 0: found continuation A, expected the first line of that answer above it",
                "0: 1 2 3|at position 3: found '1' (1 digits), expected two hexadecimal digits a byte",
                "1: 01 02 03 04 05 06 07 08|at position 0: found 8 bytes behind the line number, expected at most 7",
                "0: 01 02 03 04 05 06 07|at position 0: found 7 bytes behind the line number, expected at most 6",
                "007|at position 0: found '007', expected a length of at least 008, or bytes of two digits",
                "014 49 02|at position 0: found '014' and 2 bytes, expected a header such as 7E8, or a length and that many bytes of an"
                        + " answer",
                "48 6B 10 41 0D 28 00|at position 18: found the checksum 00, expected 39 (ISO 9141-2, ISO 14230) or A5 (SAE J1850); the"
                        + " line is damaged or its checksum is missing",
                "41 0D 28 <DATA ERROR|at position 9: found the adapter's mark of a damaged line, expected the line read again from the"
                        + " vehicle",
                "P0420|at position 0: found a code without its list, expected a code and exactly one of confirmed, stored, pending,"
                        + " permanent, such as P0420 pending",
                "P0420 pending stored|at position 0: found a code with several lists, expected a code and exactly one of confirmed,"
                        + " stored, pending, permanent, such as P0420 pending",
                "no pending P0420|at position 0: found 'no' beside a code, expected a code and exactly one of confirmed, stored, pending,"
                        + " permanent, such as P0420 pending",
                "41|in the answer 41 at position 2: found the end, expected a parameter and its data",
                "41 0C 1A|in the answer 41 0C 1A at position 8: found the end after 1 data bytes, expected 2 data bytes of PID 0C",
                "41 0D 28 9A|in the answer 41 0D 28 9A at position 9: found PID 9A, expected a PID of known length, or the end of the"
                        + " answer",
                "41 03 03 00|in the answer 41 03 03 00 at position 6: found fuel system status 03 00, expected one of 00, 01, 02, 04, 08,"
                        + " 10 in each byte",
                "42 0C|in the answer 42 0C at position 5: found the end, expected a parameter and its data",
                "42 0C 00|in the answer 42 0C 00 at position 8: found the end after 0 data bytes, expected 2 data bytes of PID 0C",
                "42 9A 00|in the answer 42 9A 00 at position 6: found PID 9A, expected a PID of known length, or the end of the answer",
                "43|in the answer 43 at position 2: found the end, expected the number of codes (CAN) or six bytes of codes",
                "43 01 04 20 01 71|in the answer 43 01 04 20 01 71 at position 3: found the count 1 before 4 bytes, expected two bytes a"
                        + " code; with the header the layout would be certain",
                "46 01 01|in the answer 46 01 01 at position 8: found the end, expected nine bytes a test",
                "46 01 05 10 00 48 00 00|in the answer 46 01 05 10 00 48 00 00 at position 3: found 7 bytes, expected nine bytes a test",
                "49 02|in the answer 49 02 at position 5: found the end, expected an infotype and its data",
                "49 02 01 31|in the answer 49 02 01 31 at position 9: found 1 characters, expected 17 characters of a vehicle"
                        + " identification number",
                "49 08 02 00 01|in the answer 49 08 02 00 01 at position 6: found the count 2 before 2 bytes, expected two bytes a"
                        + " counter, 1 to 28 counters",
                "59|in the answer 59 at position 2: found the end, expected the sub-function",
                "59 14 04 20 00 7F|in the answer 59 14 04 20 00 7F at position 3: found sub-function 14 of service $19, expected one that"
                        + " is read here: 01, 02, 0A, 15, 42, 55",
                "59 02|in the answer 59 02 at position 5: found the end, expected the availability mask",
                "59 01 FF 01|in the answer 59 01 FF 01 at position 11: found the end, expected availability, format and a count of two"
                        + " bytes",
                "59 42 33 FF FF 02|in the answer 59 42 33 FF FF 02 at position 15: found code format 02 (SAE J1939), expected 00, 01 or"
                        + " 04",
                "62 F6 01 00|in the answer 62 F6 01 00 at position 3: found identifier F601 with 1 bytes, expected F190, F802, or F400 to"
                        + " F4FF with the data of a known parameter",
                "7F 01|in the answer 7F 01 at position 5: found the end, expected 7F, the service and the reason",
            })
    void ofLinesInAScan(String line, String explanation) {
        Scan.Line read = Scan.read(line).lines().get(0);
        assertEquals(explanation, words(read.explanation()));
        assertEquals(Scan.Line.Outcome.NOT_UNDERSTOOD, read.outcome());
        assertEquals(line, read.text());
    }
}
