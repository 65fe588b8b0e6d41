package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Puts frames and numbered lines together to whole answers. Frames with a header join by their header. Without one, several answers
 * may be open at once; a line that more than one of them waits for spoils them all, because guessing would mix two control units'
 * codes.
 */
final class FrameJoiner {

    private static final int SMALLEST_SEQUENCE = 8;

    private final List<Sequence> open = new ArrayList<>();
    private final List<Integer> lengthLines = new ArrayList<>();
    private final List<Integer> lengths = new ArrayList<>();
    private final List<Integer> unusedLengthLines = new ArrayList<>();
    private final List<Message> done = new ArrayList<>();

    /** Fails where the frame has no place. */
    void add(int line, String text, LineContent.Frame frame) {
        List<Integer> bytes = frame.bytes();
        switch (bytes.get(0) >> 4) {
            case 0 -> addSingle(line, text, frame);
            case 1 -> addFirst(line, text, frame);
            case 2 -> addNext(line, text, frame.unit(), bytes.get(0) & 0xF, bytes.subList(1, bytes.size()));
            default ->
                throw refused(
                        text, Reason.of(ObdFound.CONTROL_BYTE, Part.hex(bytes.get(0))), ObdExpected.CONTROL_BYTES);
        }
    }

    private void addSingle(int line, String text, LineContent.Frame frame) {
        int length = frame.bytes().get(0);
        int there = frame.bytes().size() - 1;
        if (length == 0 || length > 7) {
            throw refused(text, Reason.of(ObdFound.FRAME_LENGTH, Part.count(length)), ObdExpected.SINGLE_FRAME_LENGTH);
        }
        Optional<Reason> missing = there < length
                ? Optional.of(Reason.of(LineNote.BYTES_ANNOUNCED, Part.count(length), Part.count(there)))
                : Optional.empty();
        List<Integer> answer = frame.bytes().subList(1, 1 + Math.min(length, there));
        if (answer.isEmpty()) {
            throw refused(
                    text, ObdFound.FRAME_WITHOUT_BYTES, Reason.of(ObdExpected.BYTES_BEHIND_LENGTH, Part.count(length)));
        }
        done.add(new Message(frame.unit(), answer, Message.Layout.CAN, true, missing, List.of(line)));
    }

    private void addFirst(int line, String text, LineContent.Frame frame) {
        List<Integer> bytes = frame.bytes();
        int length = bytes.size() < 3 ? 0 : (bytes.get(0) & 0xF) << 8 | bytes.get(1);
        if (length < SMALLEST_SEQUENCE) {
            throw refused(text, Reason.of(ObdFound.FIRST_FRAME, Part.count(length)), ObdExpected.FIRST_FRAME_LENGTH);
        }
        if (!frame.unit().isEmpty()) {
            closeAll(frame.unit());
        }
        Sequence sequence = new Sequence(frame.unit(), OptionalInt.of(length));
        sequence.add(line, 0, bytes.subList(2, bytes.size()));
        open.add(sequence);
    }

    private void addNext(int line, String text, String unit, int number, List<Integer> bytes) {
        List<Sequence> waiting = open.stream()
                .filter(sequence -> sequence.unit().equals(unit) && sequence.isDue(number))
                .toList();
        if (waiting.size() > 1) {
            waiting.forEach(Sequence::mix);
        }
        Sequence sequence = waiting.stream()
                .findFirst()
                .or(() -> outOfOrder(unit, number))
                .orElseThrow(() -> refused(
                        text,
                        Reason.of(
                                ObdFound.CONTINUATION,
                                Part.verbatim(Integer.toHexString(number).toUpperCase(java.util.Locale.ROOT))),
                        ObdExpected.FIRST_LINE));
        sequence.add(line, number, bytes);
        if (sequence.isComplete()) {
            close(sequence);
        }
    }

    private Optional<Sequence> outOfOrder(String unit, int number) {
        List<Sequence> ofUnit =
                open.stream().filter(sequence -> sequence.unit().equals(unit)).toList();
        return ofUnit.size() == 1 && ofUnit.get(0).accepts(number) ? Optional.of(ofUnit.get(0)) : Optional.empty();
    }

    /** Some answer without header waits for this continuation. */
    boolean awaits(int number) {
        return open.stream().anyMatch(sequence -> sequence.unit().isEmpty() && sequence.accepts(number));
    }

    void addLength(int line, int length) {
        lengthLines.add(line);
        lengths.add(length);
    }

    /** "0:" opens an answer and takes the oldest length that is left, unless an answer waits for its seventeenth line. */
    void add(int line, String text, LineContent.Numbered numbered) {
        boolean continues =
                open.stream().anyMatch(sequence -> sequence.unit().isEmpty() && sequence.isDue(numbered.number()));
        boolean first = numbered.number() == 0 && !continues;
        int most = first ? 6 : 7;
        if (numbered.bytes().size() > most) {
            throw refused(
                    text,
                    Reason.of(
                            ObdFound.BYTES_BEHIND_NUMBER,
                            Part.count(numbered.bytes().size())),
                    Reason.of(ObdExpected.NO_MORE_THAN, Part.count(most)));
        }
        if (!first) {
            addNext(line, text, "", numbered.number(), numbered.bytes());
            return;
        }
        OptionalInt length = lengths.isEmpty() ? OptionalInt.empty() : OptionalInt.of(lengths.remove(0));
        Sequence sequence = new Sequence("", length);
        sequence.add(line, 0, numbered.bytes());
        if (length.isPresent()) {
            sequence.addLine(lengthLines.remove(0));
        }
        open.add(sequence);
        if (sequence.isComplete()) {
            close(sequence);
        }
    }

    /** A new request ends the answers to the one before; without headers nothing else does. */
    void endOfAnswers() {
        closeAll("");
        unusedLengthLines.addAll(lengthLines);
        lengthLines.clear();
        lengths.clear();
    }

    private void closeAll(String unit) {
        open.stream().filter(sequence -> sequence.unit().equals(unit)).toList().forEach(this::close);
    }

    private void close(Sequence sequence) {
        open.remove(sequence);
        done.add(sequence.toMessage());
    }

    /** Closes what is open. */
    List<Message> finish() {
        endOfAnswers();
        List.copyOf(open).forEach(this::close);
        return done;
    }

    /** Length lines that no numbered line followed. */
    List<Integer> unusedLengthLines() {
        return unusedLengthLines;
    }

    private static ObdFormatException refused(String text, Part found, Part expected) {
        return new ObdFormatException(text, 0, found, expected);
    }
}
