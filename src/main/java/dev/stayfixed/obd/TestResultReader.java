package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import dev.stayfixed.reason.Shape;
import java.util.ArrayList;
import java.util.List;

/**
 * Service $06. On CAN nine bytes a test: OBDMID, TID, unit-and-scaling id, value, minimum, maximum. Before CAN six bytes: TID,
 * component, value and one limit.
 */
final class TestResultReader {

    private static final int RECORD_BYTES = 9;
    private static final int OLDER_BYTES = 7;
    private static final int BITMAP_BYTES = 6;

    private TestResultReader() {}

    static Decoded read(Message message) {
        List<Integer> bytes = message.bytes();
        if (bytes.size() < BITMAP_BYTES) {
            throw MessageReader.unexpected(message, bytes.size(), ObdFound.END, ObdExpected.NINE_BYTES_A_TEST);
        }
        boolean older = message.layout() != Message.Layout.CAN && bytes.size() == OLDER_BYTES;
        if (ParameterReader.isBitmap(bytes.get(1))) {
            return readBitmap(message, older);
        }
        return older ? readOlder(bytes) : readTests(message);
    }

    /** Before CAN a filler byte stands before the four bytes. */
    private static Decoded readBitmap(Message message, boolean older) {
        List<Integer> bytes = message.bytes();
        int from = older ? 3 : 2;
        int base = bytes.get(1);
        return Decoded.of(
                Reason.of(LineNote.SUPPORTED_TESTS),
                new Answer.SupportedIds(6, base, ParameterReader.bitmap(base, bytes.subList(from, from + 4))));
    }

    private static Decoded readOlder(List<Integer> bytes) {
        Answer.OlderTestResult result = new Answer.OlderTestResult(
                bytes.get(1),
                bytes.get(2) & 0x7F,
                Bytes.word(bytes, 3),
                Bytes.word(bytes, 5),
                (bytes.get(2) & 0x80) != 0);
        return Decoded.of(Reason.of(LineNote.OLDER_TEST), result);
    }

    private static Decoded readTests(Message message) {
        List<Integer> records = message.bytes().subList(1, message.bytes().size());
        List<TestResult> results = new ArrayList<>();
        int at = 0;
        for (; at + RECORD_BYTES <= records.size(); at += RECORD_BYTES) {
            List<Integer> record = records.subList(at, at + RECORD_BYTES);
            if (record.get(0) != 0) {
                results.add(test(record));
            }
        }
        if (results.isEmpty()) {
            throw MessageReader.unexpected(
                    message,
                    1,
                    Reason.of(ObdFound.BYTE_COUNT, Part.count(records.size())),
                    ObdExpected.NINE_BYTES_A_TEST);
        }
        Reason tests = Reason.of(LineNote.TESTS, Part.count(results.size()));
        int rest = records.size() - at;
        Reason said = rest == 0
                ? tests
                : Reason.of(Shape.EACH, tests, Reason.of(LineNote.BYTES_BEHIND_TESTS, Part.count(rest)));
        return Decoded.of(said, new Answer.TestResults(List.copyOf(results)));
    }

    private static TestResult test(List<Integer> record) {
        return new TestResult(
                record.get(0),
                record.get(1),
                record.get(2),
                Bytes.word(record, 3),
                Bytes.word(record, 5),
                Bytes.word(record, 7));
    }
}
