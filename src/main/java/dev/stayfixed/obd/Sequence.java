package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * One answer in several CAN frames (ISO 15765-2) while its frames come in: six bytes in the first one, seven in each of the others,
 * numbered modulo 16. Frames of one control unit may stand in any order as long as there are fewer than 16.
 */
final class Sequence {

    private static final int FIRST_BYTES = 6;
    private static final int NEXT_BYTES = 7;

    private final String unit;
    private final OptionalInt length;
    private final TreeMap<Integer, List<Integer>> pieces = new TreeMap<>();
    private final List<Integer> lines = new ArrayList<>();
    private boolean mixed;
    private int doubtfulFrom = Integer.MAX_VALUE;

    /** @param length in bytes, empty where the paste does not show it */
    Sequence(String unit, OptionalInt length) {
        this.unit = unit;
        this.length = length;
    }

    String unit() {
        return unit;
    }

    /** A line that belongs to the answer without holding bytes of it. */
    void addLine(int line) {
        lines.add(line);
    }

    void add(int line, int number, List<Integer> bytes) {
        pieces.put(place(number), bytes);
        lines.add(line);
    }

    /** The piece with this number (modulo 16) is the one that is due. */
    boolean isDue(int number) {
        int due = contiguous();
        return number == due % 16 && isWithin(due);
    }

    /** The piece with this number is still missing. */
    boolean accepts(int number) {
        return isWithin(place(number));
    }

    private boolean isWithin(int place) {
        return length.isEmpty() || place <= lastPlace();
    }

    /** The first free place with this number modulo 16. */
    private int place(int number) {
        int place = number;
        while (pieces.containsKey(place)) {
            place += 16;
        }
        return place;
    }

    private int contiguous() {
        int place = 0;
        while (pieces.containsKey(place)) {
            place++;
        }
        return place;
    }

    private int lastPlace() {
        return (length.getAsInt() - FIRST_BYTES + NEXT_BYTES - 1) / NEXT_BYTES;
    }

    boolean isComplete() {
        return length.isPresent() && contiguous() > lastPlace();
    }

    /** From here on nobody can say which control unit's bytes these are. */
    void mix() {
        mixed = true;
        doubtfulFrom = Math.min(doubtfulFrom, contiguous());
    }

    /** What is there of the answer, up to the first gap. */
    Message toMessage() {
        List<Integer> bytes = new ArrayList<>();
        int place = 0;
        Optional<Reason> missing = Optional.empty();
        while (missing.isEmpty() && place < doubtfulFrom && pieces.containsKey(place)) {
            List<Integer> piece = pieces.get(place);
            bytes.addAll(piece);
            missing = isShort(place, piece)
                    ? Optional.of(Reason.of(LineNote.FRAME_TOO_SHORT, Part.count(place), Part.count(piece.size())))
                    : Optional.empty();
            place++;
        }
        if (mixed) {
            missing = Optional.of(Reason.of(LineNote.UNITS_MIXED));
        } else if (missing.isEmpty() && isGap(place)) {
            missing = Optional.of(Reason.of(LineNote.FRAME_MISSING, Part.count(place)));
        }
        if (length.isPresent() && bytes.size() > length.getAsInt()) {
            bytes.subList(length.getAsInt(), bytes.size()).clear();
        }
        return new Message(unit, bytes, Message.Layout.CAN, length.isPresent(), missing, lines);
    }

    private boolean isGap(int place) {
        return length.isPresent() ? place <= lastPlace() : !pieces.isEmpty() && place <= pieces.lastKey();
    }

    private boolean isShort(int place, List<Integer> piece) {
        int full = place == 0 ? FIRST_BYTES : NEXT_BYTES;
        boolean last = length.isPresent() ? place == lastPlace() : place == pieces.lastKey();
        int due = !last ? full : length.isEmpty() ? 0 : length.getAsInt() - FIRST_BYTES - NEXT_BYTES * (place - 1);
        return piece.size() < due;
    }
}
