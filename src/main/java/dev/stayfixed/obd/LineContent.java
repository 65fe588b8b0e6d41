package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.List;

/** What one pasted line holds, before lines are joined to answers. Each kind knows where in the reader it goes. */
sealed interface LineContent {

    /** Fails where the line has no place among those before it. */
    void giveTo(ScanReader reader, int line, String text);

    /** Nothing from the vehicle: blank, comment, heading, adapter message. */
    record Nothing(Reason explanation) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.ignore(line, explanation);
        }
    }

    /** The adapter says that no control unit answered the last request. */
    record Unanswered(Reason explanation) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.takeSilence(line, explanation);
        }
    }

    /** The adapter says that answers to the last request were lost. */
    record Lost(Reason explanation) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.takeLoss(line, explanation);
        }
    }

    /** What the tool asked, from the service byte on. */
    record Request(List<Integer> bytes) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.takeRequest(line, bytes);
        }
    }

    /** "014": how many bytes the numbered lines below it hold together. */
    record Length(int bytes) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.joiner().addLength(line, bytes);
        }
    }

    /** "1: 47 31 4A ...": one line of an answer that the adapter numbered; the number is one hexadecimal digit and wraps. */
    record Numbered(int number, List<Integer> bytes) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.joiner().add(line, text, this);
        }
    }

    /** One CAN frame from its protocol control byte on (ISO 15765-2). */
    record Frame(String unit, List<Integer> bytes) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.takeFrame(line, text, this);
        }
    }

    /** An answer in one line, without protocol control byte. */
    record Whole(String unit, List<Integer> bytes, Message.Layout layout, boolean lengthKnown) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.takeWhole(line, this);
        }
    }

    /**
     * The adapter's mark of an answer that it could not read.
     *
     * @param text the line, because what it shows of the answer may name the list
     */
    record Damaged(String text, Reason explanation) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String whole) {
            reader.takeDamage(line, this);
        }
    }

    /**
     * Codes in words, together with the list in which they stand.
     *
     * @param whole the line is the whole list
     */
    record Words(Answer.CodeList codes, boolean whole) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.words().add(line, codes, whole);
        }
    }

    /** The malfunction indicator lamp in words. */
    record LampWords(boolean on) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            reader.words().add(line, new Answer.Lamp(on), Reason.of(on ? LineNote.MIL_ON : LineNote.MIL_OFF));
        }
    }

    /** One readiness monitor in words. */
    record MonitorWords(Answer.MonitorStatement statement) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            LineNote when = statement.thisCycle() ? LineNote.MONITOR_OF_CYCLE : LineNote.MONITOR_SINCE_CLEAR;
            reader.words().add(line, statement, Reason.of(when, statement.group(), statement.state()));
        }
    }

    /** The test of one code in this driving cycle, in words. */
    record StatusWords(Answer.CodeStatuses status) implements LineContent {
        @Override
        public void giveTo(ScanReader reader, int line, String text) {
            status.statuses()
                    .forEach((code, bits) ->
                            reader.words().add(line, status, Reason.of(said(bits), Part.verbatim(code.text()))));
        }

        private static LineNote said(StatusByte bits) {
            return switch (bits.thisCycle().orElseThrow()) {
                case PASSED -> LineNote.TEST_PASSED;
                case FAILED -> LineNote.TEST_FAILED;
                case NOT_COMPLETED -> LineNote.TEST_NOT_COMPLETED;
            };
        }
    }
}
